// A wheelchair in the body frame: its dark parts (tyres, seat, back) and its shiny parts (rims, spokes, frame).
// Its size is the same as in the checks; its shape is only a drawing, the checks use capsules.
import { BoxGeometry, BufferGeometry, CylinderGeometry, Quaternion, TorusGeometry, Vector3 } from "three";
import { mergeGeometries } from "three/addons/utils/BufferGeometryUtils.js";
import type { Chair } from "./document";
import type { Vec } from "./motion";

const TYRE = 0.016, RIM = 0.009, TUBE = 0.013, CASTOR = 0.07, SPOKES = 12; // [m], and a number
const BACK = 0.3; // [m] height of the backrest above the seat
const UP = new Vector3(0, 1, 0);

export function chair({ seat, wheel, half, knee, sole }: Chair): { dark: BufferGeometry; bright: BufferGeometry } {
  const dark: BufferGeometry[] = [], bright: BufferGeometry[] = [];
  const deep = knee[0] - 0.06, low = seat - 0.07, behind = -0.15, narrow = half - 0.14;
  dark.push(new BoxGeometry(2 * narrow, deep - behind, 0.05).translate(0, (deep + behind) / 2, seat - 0.025));
  dark.push(new BoxGeometry(2 * narrow, 0.03, BACK).translate(0, behind, seat + BACK / 2));
  for (const out of [-1, 1]) {
    const x = out * (half - 0.06), inner = out * narrow;
    dark.push(ring(wheel - TYRE, TYRE, x, 0, wheel));
    bright.push(ring(wheel - 0.05, RIM, out * (half - RIM), 0, wheel));
    for (let k = 0; k < SPOKES; k++) {
      const turn = (2 * Math.PI * k) / SPOKES, far = wheel - TYRE;
      bright.push(bar([x, 0, wheel], [x, far * Math.cos(turn), wheel + far * Math.sin(turn)], 0.003));
    }
    bright.push(bar([inner, 0, wheel], [out * half, 0, wheel], 0.02));
    bright.push(bar([inner, behind, low], [inner, deep, low], TUBE));
    bright.push(bar([inner, behind, low], [inner, behind, seat + BACK], TUBE));
    bright.push(bar([inner, 0, wheel], [inner, 0, low], TUBE));
    bright.push(bar([inner, deep, low], [out * 0.1, sole[0] + 0.05, sole[1]], TUBE));
    bright.push(bar([inner, deep - 0.08, low], [inner, deep - 0.1, 2 * CASTOR], TUBE));
    dark.push(ring(CASTOR - TYRE, TYRE, inner, deep - 0.1, CASTOR));
    bright.push(bar([inner, deep - 0.1, CASTOR], [inner, deep - 0.1, 2 * CASTOR], TUBE));
  }
  bright.push(bar([-narrow, 0, wheel], [narrow, 0, wheel], TUBE));
  dark.push(new BoxGeometry(0.3, 0.16, 0.015).translate(0, sole[0] + 0.06, sole[1] - 0.01));
  return { dark: mergeGeometries(dark), bright: mergeGeometries(bright) };
}

/** A ring that rolls ahead. */
function ring(radius: number, tube: number, x: number, y: number, z: number): BufferGeometry {
  return new TorusGeometry(radius, tube, 6, 28).rotateY(Math.PI / 2).translate(x, y, z);
}

function bar(from: Vec, to: Vec, radius: number): BufferGeometry {
  const a = new Vector3(...from), way = new Vector3(...to).sub(a), length = way.length();
  const geometry = new CylinderGeometry(radius, radius, length, 6, 1).translate(0, length / 2, 0);
  return geometry.applyQuaternion(new Quaternion().setFromUnitVectors(UP, way.normalize())).translate(a.x, a.y, a.z);
}
