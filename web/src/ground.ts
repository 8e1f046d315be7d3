// What stands on the ground and is marked on it: stage, audience, scenery, ways, posts.
import {
  BoxGeometry, BufferGeometry, CylinderGeometry, Group, Line, LineBasicMaterial, LineSegments, Mesh, MeshBasicMaterial, MeshLambertMaterial, Shape, ShapeGeometry, Vector2, Vector3,
} from "three";
import type { Document } from "./document";
import type { Palette } from "./palette";
import { gridLine, within } from "./shapes";

/** All of it, and by itself what stands so high that it can hide somebody. */
export function groundOf(doc: Document, colours: Palette): { ground: Group; pins: Group } {
  const ground = new Group(), pins = new Group();
  ground.add(pins);
  stage(ground, doc, colours);
  for (const edge of doc.place.audience) {
    for (let i = 1; i < edge.line.length; i++) {
      const [ax, ay] = edge.line[i - 1], [bx, by] = edge.line[i];
      const band = new Mesh(new BoxGeometry(Math.hypot(bx - ax, by - ay), 0.1, 0.02), new MeshBasicMaterial({ color: colours.edge }));
      band.position.set((ax + bx) / 2, (ay + by) / 2, 0);
      band.rotation.z = Math.atan2(by - ay, bx - ax);
      ground.add(band);
    }
  }
  scenery(ground, doc, colours);
  const drawn = new LineBasicMaterial({ color: colours.line, transparent: true, opacity: 0.7 });
  for (const { points } of doc.place.lines) {
    const at = points.map(([x, y]) => new Vector3(x, y, 0.004));
    if (at.length > 1) ground.add(new Line(new BufferGeometry().setFromPoints(at), drawn));
  }
  const post = (x: number, y: number, colour: number, high: number) => {
    const pin = new Mesh(new CylinderGeometry(0.05, 0.16, high, 10), new MeshLambertMaterial({ color: colour }));
    pin.rotation.x = Math.PI / 2;
    pin.position.set(x, y, high / 2);
    pins.add(pin);
  };
  for (const one of doc.crew) post(one.at[0], one.at[1], colours.post.crew, 1.2);
  for (const [x, y] of doc.place.extinguishers) post(x, y, colours.post.extinguisher, 0.6);
  for (const one of doc.place.exits) post(one.at[0], one.at[1], colours.post.exit, 0.25);
  if (doc.place.fuel) post(doc.place.fuel[0], doc.place.fuel[1], colours.post.fuel, 0.6);
  return { ground, pins };
}

function stage(ground: Group, { place }: Document, colours: Palette): void {
  const outline = place.outline.map(([x, y]) => new Vector2(x, y));
  if (outline.length <= 2) return;
  const shape = new Shape(outline);
  for (const hole of place.holes) shape.holes.push(new Shape(hole.map(([x, y]) => new Vector2(x, y))));
  const floor = new Mesh(new ShapeGeometry(shape), new MeshBasicMaterial({ color: colours.floor }));
  floor.position.z = -0.004;
  ground.add(floor);
  for (const ring of [place.outline, ...place.holes]) {
    const edge = [...ring, ring[0]].map(([x, y]) => new Vector3(x, y, 0.003));
    ground.add(new Line(new BufferGeometry().setFromPoints(edge), new LineBasicMaterial({ color: colours.line })));
  }
  const xs = outline.map((p) => p.x), ys = outline.map((p) => p.y);
  const grid: Vector3[] = [];
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const step = Math.max(1, Math.ceil(Math.max(x1 - x0, y1 - y0) / 40));
  const inside = (x: number, y: number) => within(place.outline, x, y) && !place.holes.some((hole) => within(hole, x, y));
  for (let x = Math.ceil(x0 / step) * step; x <= x1; x += step) gridLine(grid, (t) => [x, t], y0, y1, inside);
  for (let y = Math.ceil(y0 / step) * step; y <= y1; y += step) gridLine(grid, (t) => [t, y], x0, x1, inside);
  ground.add(new LineSegments(new BufferGeometry().setFromPoints(grid), new LineBasicMaterial({ color: colours.grid })));
  const centre = [new Vector3(0, y0, 0.002), new Vector3(0, y1, 0.002)];
  ground.add(new Line(new BufferGeometry().setFromPoints(centre), new LineBasicMaterial({ color: colours.centre })));
}

function scenery(ground: Group, { place }: Document, colours: Palette): void {
  const wood = new MeshLambertMaterial({ color: colours.wood });
  for (const thing of place.scenery) {
    const shape = new Shape(thing.outline.map(([x, y]) => new Vector2(x, y)));
    const top = new Mesh(new ShapeGeometry(shape), wood);
    top.position.z = thing.height;
    ground.add(top);
    const loop = [...thing.outline, thing.outline[0]];
    for (let i = 1; i < loop.length; i++) {
      const [ax, ay] = loop[i - 1], [bx, by] = loop[i];
      const wall = new Mesh(new BoxGeometry(Math.hypot(bx - ax, by - ay), 0.01, thing.height), wood);
      wall.position.set((ax + bx) / 2, (ay + by) / 2, thing.height / 2);
      wall.rotation.z = Math.atan2(by - ay, bx - ax);
      ground.add(wall);
    }
  }
}
