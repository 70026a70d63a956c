import { listenToLight } from "./light.js";
import { start } from "./start.js";

listenToLight(document);
start(document);
