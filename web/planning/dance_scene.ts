// What draws the dance in three dimensions: a script of its own, since it is most of the page's code and waits until somebody looks.
export { tracksOf } from "../src/document";
export { Framing } from "../src/framing";
export { Mover } from "../src/motion";
export { Stage } from "../src/scene";
export { Eye } from "../src/views";
