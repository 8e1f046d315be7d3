// Without WebGL: the show from the front and from above, drawn flat.
import { begins, onHead, onTrunk } from "./carriage";
import { SIDES, type Document, type Spot } from "./document";
import { emptyPose, placeOn, trailed, type Mover, type Pose, type Vec } from "./motion";
import type { Drawn } from "./scene";
import type { Box } from "./views";
import * as C from "./palette";

const TRAIL = 28;

export class Plan {
  readonly poses: Pose[];
  private readonly scratch = emptyPose();
  private width = 1;
  private height = 1;
  private ratio = 1;
  private readonly paper: CanvasRenderingContext2D;
  private mirrored = false;

  constructor(canvas: HTMLCanvasElement, private readonly doc: Document, private readonly movers: Mover[], private readonly box: Box, private colours: C.Palette) {
    const paper = canvas.getContext("2d");
    if (!paper) throw new Error("no canvas");
    this.paper = paper;
    this.poses = movers.map(() => emptyPose());
  }

  resize(width: number, height: number, ratio: number): void {
    const canvas = this.paper.canvas;
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(height * ratio);
    Object.assign(this, { width, height, ratio });
  }

  recolour(colours: C.Palette, mirrored: boolean): void {
    Object.assign(this, { colours, mirrored });
  }

  place(beat: number): void {
    this.movers.forEach((mover, i) => mover.at(beat, this.poses[i]));
  }

  draw(now: Drawn): void {
    const { paper, width, height, box, colours: own } = this;
    paper.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
    paper.fillStyle = C.css(own.background);
    paper.fillRect(0, 0, width, height);
    const across = box.x1 - box.x0 + 1, deep = box.y1 - box.y0 + 1, tall = 2.9;
    const scale = Math.max(0, Math.min((width - 24) / across, (height - 60) / (deep + tall)));
    const cx = (box.x0 + box.x1) / 2;
    const X = (x: number) => width / 2 + (x - cx) * scale;
    const front = 14 + tall * scale;
    const F = (z: number) => front - z * scale;
    const foot = front + 26 + (deep - 0.5) * scale;
    const Y = (y: number) => foot - (y - box.y0) * scale;
    paper.font = "12px system-ui, sans-serif";
    paper.fillStyle = C.css(own.line);
    paper.fillText("from the audience", 8, 14);
    paper.fillText("from above", 8, front + 16);
    this.stroke([[X(box.x0), F(0)], [X(box.x1), F(0)]], C.css(own.line), 1);
    const { outline, holes } = this.doc.place;
    for (const edge of outline.length ? [outline, ...holes] : []) {
      this.stroke([...edge, edge[0]].map(([x, y]) => [X(x), Y(y)]), C.css(own.line), 1.5);
    }
    for (const edge of this.doc.place.audience) this.stroke(edge.line.map(([x, y]) => [X(x), Y(y)]), C.css(own.edge), 4);
    for (const one of this.doc.crew) this.dot(X(one.at[0]), Y(one.at[1]), 4, C.css(own.post.crew));
    const order = this.movers.map((_, i) => i).sort((a, b) => this.poses[b].y - this.poses[a].y);
    for (const i of order) {
      if (!now.shown[i]) continue;
      const at = this.poses[i], body = this.movers[i].entry.body;
      const cloth = C.css(C.CLOTHES[i % C.CLOTHES.length]);
      const mover = this.movers[i], hips = body.hips, floor = body.chair?.seat ?? 0;
      const seen = (p: Vec): Vec => (mover.toStage(at, p, p), p);
      const chest = seen(onTrunk(body, at.angles, [0, 0, body.shoulder], [0, 0, 0]));
      const head = seen(onHead(body, at.angles, [0, 0, body.crown - body.stature * 0.065], [0, 0, 0]));
      const { chair } = body;
      if (chair) {
        const V = (x: number, y: number, z: number): Vec => seen([x, y, z]);
        const above = (...line: Vec[]) => this.stroke(line.map((p) => [X(p[0]), Y(p[1])]), C.css(C.METAL), 3);
        const before = (...line: Vec[]) => this.stroke(line.map((p) => [X(p[0]), F(p[2])]), C.css(C.METAL), 3);
        for (const x of [-chair.half, chair.half]) {
          above(V(x, -chair.wheel, 0), V(x, chair.wheel, 0));
          before(...Array.from({ length: 25 }, (_, k) => V(x, chair.wheel * Math.cos((k * Math.PI) / 12), chair.wheel * (1 + Math.sin((k * Math.PI) / 12)))));
          above(V(x / 3, 0, 0), V(x / 3, ...chair.knee), V(x / 3, chair.sole[0] + 0.15, 0));
          before(V(x / 3, 0, body.hips), V(x / 3, ...chair.knee), V(x / 3, ...chair.sole));
        }
        before(V(-chair.half, 0, chair.seat), V(chair.half, 0, chair.seat));
      }
      paper.fillStyle = cloth;
      paper.beginPath();
      paper.ellipse(X(chest[0]), Y(chest[1]), body.halfBreadth * scale, 0.13 * scale, -Math.atan2(at.sin, at.cos) - at.angles[0], 0, 2 * Math.PI);
      paper.fill();
      // A nose shows the facing: facing 0 looks down the page, at the audience.
      this.stroke([[X(at.x), Y(at.y)], [X(at.x + at.sin * 0.34), Y(at.y - at.cos * 0.34)]], C.css(own.text), 2);
      paper.beginPath();
      for (const [x, z] of [[at.x - 0.13, floor], [at.x - 0.13, hips], [chest[0] - 0.13, chest[2]], [chest[0] + 0.13, chest[2]], [at.x + 0.13, hips], [at.x + 0.13, floor]])
        paper.lineTo(X(x), F(z));
      paper.fill();
      this.dot(X(head[0]), F(head[2]), 0.11 * scale, C.css(C.SKIN));
      paper.fillStyle = C.css(own.text);
      paper.fillText(this.movers[i].entry.name.slice(0, 24), X(at.x) + 0.45 * scale, Y(at.y) + 0.7 * scale);
      if (now.alert[i]) this.ring(X(at.x), Y(at.y), 0.7 * scale, C.css(own.alert));
      else if (i === now.follow && this.movers.length > 1) this.ring(X(at.x), Y(at.y), 0.5 * scale, C.css(own.text));
      for (const side of SIDES) {
        const prop = this.movers[i].entry.props[side];
        if (!prop) continue;
        const colour = C.css((side === "left") !== this.mirrored ? own.left : own.right);
        const hand = at.hand[side];
        const shoulder = seen(begins(body, at.angles, side, at.bodyHand[side]));
        const radius = Math.max(3, prop.wick * scale);
        for (const V of [(p: Vec): [number, number] => [X(p[0]), Y(p[1])], (p: Vec): [number, number] => [X(p[0]), F(p[2])]]) {
          for (const spot of trailed(prop)) this.trail(i, side, spot, now, V, colour);
          this.stroke([V(chest), V(shoulder), V(hand)], cloth, 4);
          for (const [a, b, c, d] of prop.lines)
            this.stroke([V(placeOn(at, side, [a, b], [0, 0, 0])), V(placeOn(at, side, [c, d], [0, 0, 0]))], colour, 1.5);
          for (const spot of prop.heads) {
            const wick = V(placeOn(at, side, spot, [0, 0, 0]));
            this.dot(...wick, radius, colour);
            if (now.lit[i]) this.ring(...wick, radius + 3, C.css(own.warn));
          }
        }
      }
    }
  }

  private trail(i: number, side: "left" | "right", spot: Spot, now: Drawn, V: (p: Vec) => [number, number], colour: string): void {
    if (now.trail <= 0) return;
    const at: Vec = [0, 0, 0];
    const points: [number, number][] = [];
    for (let k = 0; k < TRAIL; k++) {
      this.movers[i].headAt(now.beat - (k / (TRAIL - 1)) * now.trail, side, this.scratch, at, spot);
      points.push(V(at));
    }
    this.paper.globalAlpha = 0.55;
    this.stroke(points, colour, 1.5);
    this.paper.globalAlpha = 1;
  }

  private stroke(points: [number, number][], colour: string, width: number): void {
    const { paper } = this;
    paper.strokeStyle = colour;
    paper.lineWidth = width;
    paper.beginPath();
    points.forEach(([x, y], i) => (i ? paper.lineTo(x, y) : paper.moveTo(x, y)));
    paper.stroke();
  }

  private dot(x: number, y: number, r: number, colour: string): void {
    this.paper.fillStyle = colour;
    this.paper.beginPath();
    this.paper.arc(x, y, r, 0, 2 * Math.PI);
    this.paper.fill();
  }

  private ring(x: number, y: number, r: number, colour: string): void {
    this.paper.strokeStyle = colour;
    this.paper.lineWidth = 2;
    this.paper.beginPath();
    this.paper.arc(x, y, r, 0, 2 * Math.PI);
    this.paper.stroke();
  }
}
