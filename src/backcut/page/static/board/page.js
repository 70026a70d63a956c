import { begin } from "./begin.js";
import { listenToLight } from "./light.js";

listenToLight(document);
begin(document);
