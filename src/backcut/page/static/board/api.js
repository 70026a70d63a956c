// The story the page carries. The board knows no basketball: everything drawn or said was made before.
export function readStory(root) {
  return JSON.parse(root.getElementById("story").textContent);
}
