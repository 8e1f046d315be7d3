// Shapes and materials of the stage.
import {
  AdditiveBlending, BufferAttribute, BufferGeometry, CircleGeometry, DoubleSide, DynamicDrawUsage, Float32BufferAttribute, LatheGeometry, Line, Mesh, MeshBasicMaterial, MultiplyBlending, NormalBlending, ShaderMaterial, Vector2, Vector3, type Group,
} from "three";

export const TRAIL = 64; // samples of a trail

export function gridLine(out: Vector3[], at: (t: number) => [number, number], from: number, to: number, inside: (x: number, y: number) => boolean): void {
  const n = 24;
  for (let i = 0; i < n; i++) {
    const a = at(from + ((to - from) * i) / n), b = at(from + ((to - from) * (i + 1)) / n);
    if (inside((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)) out.push(new Vector3(a[0], a[1], 0), new Vector3(b[0], b[1], 0));
  }
}

export function within(outline: [number, number][], x: number, y: number): boolean {
  let odd = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i], [bx, by] = outline[j];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
  }
  return odd;
}

/** Hips to neck, as broad as the shoulders; x is scaled by half the shoulders, y and z by the stature. */
export function torso(): BufferGeometry {
  const profile: [number, number][] = [
    [0, 0.47], [0.6, 0.475], [0.8, 0.5], [0.82, 0.535], [0.7, 0.6], [0.72, 0.65], [0.88, 0.72], [0.97, 0.77], [0.9, 0.805], [0.6, 0.825], [0.3, 0.838], [0, 0.84],
  ];
  const geometry = new LatheGeometry(profile.map(([r, h]) => new Vector2(r, h)), 11);
  geometry.rotateX(Math.PI / 2);
  geometry.scale(1, 0.068, 1); // depth: the y scale is the stature's
  return geometry;
}

/** Light of a flame on the floor: brightest in the middle, nothing at the rim. */
export function pool(): BufferGeometry {
  const geometry = new CircleGeometry(1, 18);
  const count = geometry.getAttribute("position").count;
  const light = new Float32Array(count * 3);
  light.fill(0.17, 0, 3);
  geometry.setAttribute("color", new Float32BufferAttribute(light, 3));
  return geometry;
}

export function ringGeometry(inner: number, outer: number, dashes: number): BufferGeometry {
  const n = 48, places: number[] = [], index: number[] = [];
  for (let i = 0; i <= n; i++) {
    const t = (2 * Math.PI * i) / n;
    for (const r of [inner, outer]) places.push(r * Math.cos(t), r * Math.sin(t), 0);
    if (i < n && (dashes === 0 || Math.floor((i * dashes * 2) / n) % 2 === 0)) {
      const k = 2 * i;
      index.push(k, k + 1, k + 2, k + 2, k + 1, k + 3);
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new Float32BufferAttribute(places, 3));
  geometry.setIndex(index);
  return geometry;
}

/** A thin circle with arrow heads that run anticlockwise about its axis. */
export function sense(): BufferGeometry {
  const ring = ringGeometry(0.988, 1.0, 0);
  const places = Array.from(ring.getAttribute("position").array);
  const index = Array.from(ring.getIndex()!.array);
  for (let k = 0; k < 4; k++) {
    const t = (Math.PI / 2) * k + Math.PI / 4;
    const at = (r: number, turn: number) => [r * Math.cos(t + turn), r * Math.sin(t + turn), 0];
    const first = places.length / 3;
    places.push(...at(0.93, -0.05), ...at(1.06, -0.05), ...at(0.994, 0.14));
    index.push(first, first + 1, first + 2);
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new Float32BufferAttribute(places, 3));
  geometry.setIndex(index);
  return geometry;
}

export function ribbons(count: number): BufferGeometry {
  const geometry = new BufferGeometry();
  const index: number[] = [];
  for (let k = 0; k < count; k++) {
    for (let i = 0; i < TRAIL - 1; i++) {
      const v = (k * TRAIL + i) * 2;
      index.push(v, v + 1, v + 2, v + 2, v + 1, v + 3);
    }
  }
  geometry.setIndex(index);
  geometry.setAttribute("position", new BufferAttribute(new Float32Array(count * TRAIL * 6), 3).setUsage(DynamicDrawUsage));
  geometry.setAttribute("color", new BufferAttribute(new Float32Array(count * TRAIL * 6), 3).setUsage(DynamicDrawUsage));
  return geometry;
}

export function trailMaterial(): MeshBasicMaterial {
  return new MeshBasicMaterial({ vertexColors: true, transparent: true, blending: AdditiveBlending, depthWrite: false, side: DoubleSide });
}

/** Flames shine before a dark ground; on a bright one, where added light is not seen, they are laid over it. */
export function flameByDay(material: ShaderMaterial, day: boolean): void {
  material.uniforms.day.value = day ? 1 : 0;
  material.blending = day ? NormalBlending : AdditiveBlending;
}

/** Trails glow before a dark ground, and darken a bright one. */
export function trailByDay(material: MeshBasicMaterial, day: boolean): void {
  material.blending = day ? MultiplyBlending : AdditiveBlending;
  material.premultipliedAlpha = day;
  material.needsUpdate = true;
}

/** Empties a group, and gives back what it held of the graphics card. */
export function dropped(group: Group): void {
  group.traverse((each) => {
    if (each instanceof Mesh || each instanceof Line) each.geometry.dispose();
  });
  group.clear();
}

/** Light from the sky and from the front, computed per vertex: half the work of per pixel. */
export function shadedMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: `
      varying vec3 shade;
      void main() {
        mat3 turn = mat3(instanceMatrix);
        vec3 sizes = vec3(dot(turn[0], turn[0]), dot(turn[1], turn[1]), dot(turn[2], turn[2])) + 1e-9;
        vec3 n = normalize(turn * (normal / sizes));
        vec3 sky = mix(vec3(0.07, 0.05, 0.03), vec3(0.47, 0.52, 0.58), 0.5 + 0.5 * n.z);
        vec3 front = vec3(0.54, 0.48, 0.40) * max(0.0, dot(n, vec3(-0.315, -0.63, 0.709)));
        shade = instanceColor.rgb * (sky + front) * 1.3;
        gl_Position = projectionMatrix * modelViewMatrix * instanceMatrix * vec4(position, 1.0);
      }`,
    fragmentShader: `
      varying vec3 shade;
      void main() {
        gl_FragColor = vec4(shade, 1.0);
        #include <colorspace_fragment>
      }`,
  });
}

export function flameMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    transparent: true,
    depthWrite: false,
    blending: AdditiveBlending,
    uniforms: { scale: { value: 720 }, day: { value: 0 } },
    vertexShader: `
      attribute float size;
      uniform float scale;
      void main() {
        vec4 at = modelViewMatrix * vec4(position, 1.0);
        gl_Position = projectionMatrix * at;
        gl_PointSize = min(size * scale * projectionMatrix[1][1] * 0.5 / -at.z, 256.0);
        if (size <= 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      }`,
    fragmentShader: `
      uniform float day;
      void main() {
        vec2 p = gl_PointCoord - 0.5;
        float r = length(p * vec2(1.15, 1.0 + 0.25 * step(0.0, -p.y))) * 2.0;
        float glow = pow(max(0.0, 1.0 - r), 2.2);
        vec3 fire = mix(vec3(1.0, 0.36, 0.05), vec3(1.0, 0.86, 0.52), glow);
        if (day > 0.5) gl_FragColor = vec4(mix(vec3(0.85, 0.16, 0.0), vec3(1.0, 0.55, 0.05), glow), min(1.0, 1.3 * glow));
        else gl_FragColor = vec4(fire * glow, glow);
      }`,
  });
}
