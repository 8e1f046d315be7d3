// The stage in three dimensions. Everything is placed from the beat alone; no state is carried over from the last frame.
import {
  AdditiveBlending, BoxGeometry, BufferAttribute, BufferGeometry, CircleGeometry, Color, CylinderGeometry,
  DirectionalLight, DoubleSide, DynamicDrawUsage, Group, HemisphereLight, InstancedMesh,
  LineBasicMaterial, LineSegments, Matrix4, Mesh, MeshBasicMaterial, PerspectiveCamera,
  Points, Quaternion, Scene, ShaderMaterial, SphereGeometry, Vector3, WebGLRenderer,
} from "three";
import { chair } from "./chair";
import { headTurn, onHead, onTrunk, trunkTurn, type Rows } from "./carriage";
import { SIDES, type Document, type Prop, type Side } from "./document";
import { groundOf } from "./ground";
import { newSkeleton, pose, type Skeleton, LIMBS, BALLS } from "./figure";
import { emptyPose, placeOn, trailed, type Mover, type Pose, type Vec } from "./motion";
import * as C from "./palette";
import { TRAIL, dropped, flameByDay, flameMaterial, pool, ribbons, ringGeometry, sense, shadedMaterial, torso, trailByDay, trailMaterial } from "./shapes";

const UP = new Vector3(0, 1, 0);

export interface Drawn {
  beat: number;
  shown: boolean[];
  lit: boolean[];
  alert: boolean[]; // ringed
  follow: number;
  hideBody: number; // performer whose head and trunk are not drawn, −1 for nobody
  trail: number; // [beats]
  planes: boolean;
  flicker: boolean; // of the flames
  front: number | null; // [m] posts before this are not drawn
  walk: number; // formation whose walks are drawn, −1 for none
}

export class Stage {
  readonly renderer: WebGLRenderer;
  readonly scene = new Scene();
  readonly camera = new PerspectiveCamera(45, 1, 0.05, 300);
  readonly poses: Pose[];
  private readonly scratch = emptyPose();
  private readonly skeletons: Skeleton[];
  private readonly limbs: InstancedMesh;
  private readonly balls: InstancedMesh;
  private readonly torsos: InstancedMesh;
  private readonly skulls: InstancedMesh;
  private readonly hair: InstancedMesh;
  private readonly feet: InstancedMesh;
  private readonly chairs: { who: number; mesh: InstancedMesh; colour: number }[] = [];
  private readonly tethers: InstancedMesh;
  private readonly wicks: InstancedMesh;
  private readonly grips: InstancedMesh;
  private readonly discs: InstancedMesh;
  private readonly rings: InstancedMesh;
  private readonly pools: InstancedMesh;
  private readonly flames: Points;
  private readonly trails: Mesh;
  private readonly alerts: InstancedMesh;
  private readonly followed: Mesh;
  private readonly ways = new Group();
  private readonly grounds = new Group();
  private pins = new Group();
  private mirrored = false;
  private readonly tint = new Color();
  private walkShown = -2;
  private readonly props: { who: number; side: Side; prop: Prop }[] = [];
  readonly software: boolean;

  constructor(canvas: HTMLCanvasElement, private readonly doc: Document, private readonly movers: Mover[], private colours: C.Palette = C.NIGHT) {
    const probe = document.createElement("canvas").getContext("webgl2");
    if (!probe) throw new Error("no WebGL");
    const info = probe.getExtension("WEBGL_debug_renderer_info");
    const name = info ? String(probe.getParameter(info.UNMASKED_RENDERER_WEBGL)) : "";
    probe.getExtension("WEBGL_lose_context")?.loseContext();
    this.software = /swiftshader|llvmpipe|software/i.test(name);
    // Antialiasing costs about half of the frames if the processor draws without a graphics card.
    // An opaque drawing spares the browser from blending it with the page.
    const context = canvas.getContext("webgl2", { alpha: false, antialias: !this.software, depth: true, stencil: false, powerPreference: "low-power" });
    if (!context) throw new Error("no WebGL");
    this.renderer = new WebGLRenderer({ canvas, context });
    this.camera.up.set(0, 0, 1);
    this.poses = movers.map(() => emptyPose());
    this.skeletons = movers.map((m) => newSkeleton(m.entry.body));
    movers.forEach((m, who) => SIDES.forEach((side) => {
      const prop = m.entry.props[side];
      if (prop) this.props.push({ who, side, prop });
    }));

    this.scene.add(new HemisphereLight(0xdfe9f5, 0x4a3a2c, 1.9));
    const key = new DirectionalLight(0xfff1dd, 1.7);
    key.position.set(-4, -8, 9);
    this.scene.add(key);
    this.scene.add(this.grounds);

    const lambert = () => shadedMaterial();
    const n = movers.length, m = Math.max(this.props.length, 1);
    const all = (of: (prop: Prop) => number) => Math.max(this.props.reduce((sum, { prop }) => sum + of(prop), 0), 1);
    const lines = all((prop) => prop.lines.length), heads = all((prop) => prop.heads.length);
    const make = (geometry: BufferGeometry, count: number, material: ShaderMaterial | MeshBasicMaterial = lambert()) => {
      const mesh = new InstancedMesh(geometry, material, count);
      mesh.instanceMatrix.setUsage(DynamicDrawUsage);
      mesh.frustumCulled = false;
      this.scene.add(mesh);
      return mesh;
    };
    const tube = new CylinderGeometry(0.82, 1, 1, 7, 1, true);
    const ball = new SphereGeometry(1, 8, 5);
    this.limbs = make(tube, n * LIMBS);
    this.balls = make(ball, n * BALLS);
    this.torsos = make(torso(), n);
    this.skulls = make(new SphereGeometry(1, 11, 8), n);
    this.hair = make(new SphereGeometry(1, 10, 4, 0, Math.PI * 2, 0, Math.PI * 0.5).rotateX(Math.PI / 2).rotateX(0.75), n);
    this.feet = make(new BoxGeometry(0.085, 0.24, 0.07), n * 2);
    movers.forEach((mover, who) => {
      if (!mover.entry.body.chair) return;
      const { dark, bright } = chair(mover.entry.body.chair);
      this.chairs.push({ who, mesh: make(dark, 1), colour: C.SEAT }, { who, mesh: make(bright, 1), colour: C.METAL });
    });
    this.tethers = make(new CylinderGeometry(1, 1, 1, 4, 1, true), lines, new MeshBasicMaterial());
    this.wicks = make(ball, heads, new MeshBasicMaterial());
    this.grips = make(new SphereGeometry(1, 6, 4), m, new MeshBasicMaterial());
    const glass = new MeshBasicMaterial({ transparent: true, opacity: 0.07, side: DoubleSide, depthWrite: false });
    this.discs = make(new CircleGeometry(1, 32), m, glass);
    const ink = new MeshBasicMaterial({ transparent: true, opacity: 0.75, side: DoubleSide, depthWrite: false });
    this.rings = make(sense(), m, ink);
    this.pools = make(pool(), heads, new MeshBasicMaterial({ transparent: true, blending: AdditiveBlending, depthWrite: false, vertexColors: true }));
    this.alerts = make(ringGeometry(0.62, 0.7, 12), n, new MeshBasicMaterial({ side: DoubleSide, depthWrite: false, transparent: true }));
    this.followed = new Mesh(ringGeometry(0.46, 0.5, 0), new MeshBasicMaterial({ transparent: true, opacity: 0.55, depthWrite: false }));
    this.scene.add(this.followed, this.ways);

    const spots = new BufferGeometry();
    spots.setAttribute("position", new BufferAttribute(new Float32Array(heads * 3), 3).setUsage(DynamicDrawUsage));
    spots.setAttribute("size", new BufferAttribute(new Float32Array(heads), 1).setUsage(DynamicDrawUsage));
    this.flames = new Points(spots, flameMaterial());
    this.flames.frustumCulled = false;
    this.trails = new Mesh(ribbons(all((prop) => trailed(prop).length)), trailMaterial());
    this.trails.frustumCulled = false;
    this.scene.add(this.flames, this.trails);
    this.recolour(colours, false);
  }

  resize(width: number, height: number, ratio: number): void {
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / Math.max(height, 1);
    this.camera.updateProjectionMatrix();
    (this.flames.material as ShaderMaterial).uniforms.scale.value = height * ratio;
  }

  /** Other colours; and left and right changed over, for a mirror image in which the left hand is to look like one. */
  recolour(colours: C.Palette, mirrored: boolean): void {
    this.colours = colours;
    this.mirrored = mirrored;
    this.renderer.setClearColor(colours.background);
    dropped(this.grounds);
    const { ground, pins } = groundOf(this.doc, colours);
    this.grounds.add(ground);
    this.pins = pins;
    (this.alerts.material as MeshBasicMaterial).color.set(colours.alert);
    (this.followed.material as MeshBasicMaterial).color.set(colours.text);
    flameByDay(this.flames.material as ShaderMaterial, colours.light);
    trailByDay(this.trails.material as MeshBasicMaterial, colours.light);
    this.walkShown = -2;
    this.paint();
  }

  private tintOf(side: Side): number {
    return (side === "left") !== this.mirrored ? this.colours.left : this.colours.right;
  }

  private paint(): void {
    const colour = new Color();
    this.movers.forEach((_, i) => {
      const cloth = C.CLOTHES[i % C.CLOTHES.length];
      const of = (kind: string) => (kind === "skin" ? C.SKIN : kind === "cloth" ? cloth : C.TROUSERS);
      this.skeletons[i].limbs.forEach((limb, k) => this.limbs.setColorAt(i * LIMBS + k, colour.set(of(limb.kind))));
      this.skeletons[i].balls.forEach((ball, k) => this.balls.setColorAt(i * BALLS + k, colour.set(of(ball.kind))));
      this.torsos.setColorAt(i, colour.set(cloth));
      this.skulls.setColorAt(i, colour.set(C.SKIN));
      this.hair.setColorAt(i, colour.set(C.HAIR));
      this.feet.setColorAt(2 * i, colour.set(C.SHOE));
      this.feet.setColorAt(2 * i + 1, colour.set(C.SHOE));
    });
    for (const part of this.chairs) part.mesh.setColorAt(0, colour.set(part.colour));
    let line = 0, wick = 0;
    this.props.forEach(({ side, prop }, k) => {
      colour.set(this.tintOf(side));
      for (const mesh of [this.grips, this.discs, this.rings]) mesh.setColorAt(k, colour);
      prop.lines.forEach(() => this.tethers.setColorAt(line++, colour));
      prop.heads.forEach(() => this.wicks.setColorAt(wick++, colour));
    });
    for (let k = 0; k < Math.max(wick, 1); k++) this.pools.setColorAt(k, colour.set(0xff9a3c));
    for (const mesh of [this.limbs, this.balls, this.torsos, this.skulls, this.hair, this.feet, this.tethers, this.wicks, this.grips, this.pools])
      if (mesh.instanceColor) mesh.instanceColor.needsUpdate = true;
  }

  /** Poses of everyone at a beat; positions are read from here, drawn or not. */
  place(beat: number): void {
    this.movers.forEach((mover, i) => mover.at(beat, this.poses[i]));
  }

  draw(now: Drawn): void {
    const matrix = new Matrix4(), q = new Quaternion(), a = new Vector3(), b = new Vector3(), s = new Vector3();
    const hidden = new Matrix4().makeScale(0, 0, 0);
    const between = (mesh: InstancedMesh, k: number, from: Vec, to: Vec, radius: number) => {
      a.set(...from);
      b.set(...to).sub(a);
      const length = Math.max(b.length(), 1e-6);
      q.setFromUnitVectors(UP, s.copy(b).divideScalar(length));
      a.addScaledVector(b, 0.5);
      mesh.setMatrixAt(k, matrix.compose(a, q, s.set(radius, length, radius)));
    };
    const still = new Quaternion();
    const ball = (mesh: InstancedMesh, k: number, at: Vec, r: number) =>
      mesh.setMatrixAt(k, matrix.compose(a.set(...at), still, s.set(r, r, r)));
    const upright = new Quaternion(), Z = new Vector3(0, 0, 1), place: Vec = [0, 0, 0];
    const leant = (m: Rows) => {
      matrix.set(m[0], m[1], m[2], 0, m[3], m[4], m[5], 0, m[6], m[7], m[8], 0, 0, 0, 0, 1);
      return q.setFromRotationMatrix(matrix).premultiply(upright);
    };
    this.movers.forEach((mover, i) => {
      const at = this.poses[i], bones = this.skeletons[i], body = mover.entry.body;
      const seen = now.shown[i];
      const own = now.hideBody === i;
      if (seen) pose(bones, mover, at, now.beat, this.scratch);
      bones.limbs.forEach((limb, k) => {
        const index = i * LIMBS + k;
        if (!seen || (own && k === 0)) this.limbs.setMatrixAt(index, hidden);
        else between(this.limbs, index, limb.from, limb.to, limb.r0);
      });
      bones.balls.forEach((joint, k) => {
        const index = i * BALLS + k;
        if (!seen || (own && (k === 0 || k === 1 || k === 5))) this.balls.setMatrixAt(index, hidden);
        else ball(this.balls, index, joint.at, joint.r);
      });
      // Body y is −Y at facing 0, so the trunk turns half a turn more than the facing.
      upright.setFromAxisAngle(Z, Math.atan2(at.sin, at.cos) + Math.PI);
      if (!seen || own) {
        this.torsos.setMatrixAt(i, hidden);
        this.skulls.setMatrixAt(i, hidden);
        this.hair.setMatrixAt(i, hidden);
      } else {
        mover.toStage(at, onTrunk(body, at.angles, [0, 0, body.crown - body.stature], place), place); // the trunk's shape starts at the floor of a standing body
        this.torsos.setMatrixAt(i, matrix.compose(a.set(...place), leant(trunkTurn(at.angles)), s.set(body.halfShoulder, body.stature, body.stature)));
        mover.toStage(at, onHead(body, at.angles, [0, 0, body.crown - body.stature * 0.065], place), place);
        leant(headTurn(at.angles));
        this.skulls.setMatrixAt(i, matrix.compose(a.set(...place), q, s.set(0.077, 0.095, body.stature * 0.066)));
        this.hair.setMatrixAt(i, matrix.compose(a, q, s.set(0.083, 0.101, body.stature * 0.0705)));
      }
      bones.feet.forEach((foot, k) => {
        if (!seen) this.feet.setMatrixAt(2 * i + k, hidden);
        else this.feet.setMatrixAt(2 * i + k, matrix.compose(a.set(foot.at[0] - -at.sin * -0.05, foot.at[1] - at.cos * 0.05, foot.at[2] - 0.045), upright, s.set(1, 1, 1)));
      });
      if (seen && now.alert[i]) this.alerts.setMatrixAt(i, matrix.compose(a.set(at.x, at.y, 0.012), still, s.set(1, 1, 1)));
      else this.alerts.setMatrixAt(i, hidden);
    });
    for (const { who, mesh } of this.chairs) {
      const at = this.poses[who];
      upright.setFromAxisAngle(Z, Math.atan2(at.sin, at.cos) + Math.PI);
      mesh.setMatrixAt(0, now.shown[who] ? matrix.compose(a.set(at.x, at.y, 0), upright, s.set(1, 1, 1)) : hidden);
      mesh.instanceMatrix.needsUpdate = true;
    }
    const leader = this.poses[now.follow];
    this.followed.visible = leader !== undefined && now.shown[now.follow] && this.movers.length > 1;
    if (leader) this.followed.position.set(leader.x, leader.y, 0.01);

    const spots = this.flames.geometry.getAttribute("position") as BufferAttribute;
    const sizes = this.flames.geometry.getAttribute("size") as BufferAttribute;
    const seconds = now.beat;
    let discs = 0, pools = 0; // only visible parts go to the renderer
    let line = 0, wick = 0;
    const from: Vec = [0, 0, 0], to: Vec = [0, 0, 0];
    this.props.forEach(({ who, side, prop }, k) => {
      const seen = now.shown[who];
      const at = this.poses[who];
      const burning = seen && now.lit[who];
      if (!seen) {
        prop.lines.forEach(() => this.tethers.setMatrixAt(line++, hidden));
        prop.heads.forEach(() => {
          sizes.setX(wick, 0);
          this.wicks.setMatrixAt(wick++, hidden);
        });
        this.grips.setMatrixAt(k, hidden);
        return;
      }
      for (const [x, y, u, v] of prop.lines)
        between(this.tethers, line++, placeOn(at, side, [x, y], from), placeOn(at, side, [u, v], to), 0.009);
      ball(this.grips, k, at.hand[side], 0.034);
      const bright = trailed(prop).length; // where many wicks are close together, one lights the floor
      prop.heads.forEach((spot, i) => {
        const head = placeOn(at, side, spot, to);
        ball(this.wicks, wick, head, prop.wick);
        spots.setXYZ(wick, head[0], head[1], head[2] + (burning ? prop.flame * 0.12 : 0));
        const flicker = now.flicker ? 1 + 0.05 * Math.sin(23 * seconds + 5 * wick) + 0.03 * Math.sin(41 * seconds + wick) : 1;
        sizes.setX(wick++, burning ? (prop.wick + prop.flame) * 1.5 * flicker : 0);
        if (burning && i < bright && !this.colours.light) this.pools.setMatrixAt(pools++, matrix.compose(a.set(head[0], head[1], 0.006), still, s.setScalar(0.5 + 0.35 * head[2])));
      });
      if (now.planes && (this.movers.length <= 4 || who === now.follow)) {
        q.setFromUnitVectors(Z, b.set(...at.plane[side]));
        matrix.compose(a.set(...at.hand[side]), q, s.setScalar(prop.length));
        this.discs.setMatrixAt(discs, now.hideBody === who ? hidden : matrix);
        this.rings.setMatrixAt(discs, matrix);
        const tint = this.tint.set(this.tintOf(side));
        this.discs.setColorAt(discs, tint);
        this.rings.setColorAt(discs++, tint);
      }
    });
    this.discs.count = this.rings.count = discs;
    this.pools.count = pools;
    if (this.discs.instanceColor) this.discs.instanceColor.needsUpdate = true;
    if (this.rings.instanceColor) this.rings.instanceColor.needsUpdate = true;
    spots.needsUpdate = true;
    sizes.needsUpdate = true;
    for (const mesh of [this.limbs, this.balls, this.torsos, this.skulls, this.hair, this.feet, this.tethers, this.wicks, this.grips, this.discs, this.rings, this.pools, this.alerts])
      mesh.instanceMatrix.needsUpdate = true;
    // Anything between the camera and the nearest performer keeps its label but hides nobody.
    for (const pin of this.pins.children) pin.visible = now.front === null || pin.position.y > now.front;
    this.drawTrails(now);
    this.drawWays(now);
    this.renderer.render(this.scene, this.camera);
  }

  /** Ribbons through the heads' recent positions, facing the camera, fading with age. */
  private drawTrails(now: Drawn): void {
    const geometry = this.trails.geometry;
    const place = geometry.getAttribute("position") as BufferAttribute;
    const tint = geometry.getAttribute("color") as BufferAttribute;
    const eye = this.camera.position;
    const at: Vec = [0, 0, 0], before: Vec = [0, 0, 0];
    const points = place.array as Float32Array, colours = tint.array as Float32Array;
    this.trails.visible = now.trail > 0;
    if (now.trail <= 0) return;
    let o = 0;
    const ways = this.props.flatMap(({ who, side, prop }) => trailed(prop).map((spot) => ({ who, side, spot })));
    for (const { who, side, spot } of ways) {
      if (!now.shown[who]) {
        points.fill(0, o, o + TRAIL * 6);
        o += TRAIL * 6;
        continue;
      }
      const lit = now.lit[who];
      const base = this.tintOf(side), day = this.colours.light;
      const [r, g, bl] = [16, 8, 0].map((shift) => (((base >> shift) & 255) / 255) ** (day ? 2.2 : 1));
      for (let i = 0; i < TRAIL; i++, o += 6) {
        const age = i / (TRAIL - 1);
        this.movers[who].headAt(now.beat - age * now.trail, side, this.scratch, at, spot);
        if (i === 0) this.movers[who].headAt(now.beat + now.trail / TRAIL, side, this.scratch, before, spot);
        const tx = before[0] - at[0], ty = before[1] - at[1], tz = before[2] - at[2];
        const ex = eye.x - at[0], ey = eye.y - at[1], ez = eye.z - at[2];
        let sx = ty * ez - tz * ey, sy = tz * ex - tx * ez, sz = tx * ey - ty * ex;
        const size = Math.hypot(sx, sy, sz) || 1;
        const width = (lit ? 0.04 : 0.026) * (1 - 0.75 * age) * (now.hideBody === who ? 0.45 : 1);
        sx *= width / size; sy *= width / size; sz *= width / size;
        points[o] = at[0] + sx; points[o + 1] = at[1] + sy; points[o + 2] = at[2] + sz;
        points[o + 3] = at[0] - sx; points[o + 4] = at[1] - sy; points[o + 5] = at[2] - sz;
        const fade = Math.pow(1 - age, 1.4) * (lit ? 0.95 : 0.7);
        const hot = lit ? Math.pow(1 - age, 12) * 0.55 : 0;
        for (const j of [o, o + 3]) {
          if (day) { // taken from the bright ground
            colours[j] = 1 - (1 - r) * fade; colours[j + 1] = 1 - (1 - g) * fade; colours[j + 2] = 1 - (1 - bl) * fade;
            continue;
          }
          colours[j] = Math.min(1, r * fade + hot);
          colours[j + 1] = Math.min(1, g * fade + hot * 0.85);
          colours[j + 2] = Math.min(1, bl * fade + hot * 0.5);
        }
        before[0] = at[0]; before[1] = at[1]; before[2] = at[2];
      }
    }
    place.needsUpdate = true;
    tint.needsUpdate = true;
  }

  /** Walks from one formation to the next, and the spots where they end. */
  private drawWays(now: Drawn): void {
    if (now.walk === this.walkShown) return;
    this.walkShown = now.walk;
    dropped(this.ways);
    const standing = this.doc.standings[now.walk];
    if (!standing) return;
    const line = new LineBasicMaterial({ color: this.colours.line, transparent: true, opacity: 0.8 });
    const ring = new MeshBasicMaterial({ color: this.colours.line, transparent: true, opacity: 0.6, depthWrite: false });
    for (const [who, x, y] of standing.spots) {
      const mark = new Mesh(ringGeometry(0.24, 0.28, 0), ring);
      mark.position.set(x, y, 0.008);
      this.ways.add(mark);
      const points: Vector3[] = [];
      for (let i = 0; i <= 48; i++) {
        const beat = standing.walk + ((standing.start - standing.walk) * i) / 48;
        this.movers[who].stand(beat, this.scratch);
        points.push(new Vector3(this.scratch.x, this.scratch.y, 0.01));
      }
      if (points[0].distanceTo(points[48]) > 0.05) {
        this.ways.add(new LineSegments(new BufferGeometry().setFromPoints(points.slice(0, 48)), line));
      }
    }
  }
}
