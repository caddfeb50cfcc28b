import { BufferAttribute, BufferGeometry, LatheGeometry, Path, Shape, ShapeGeometry, Vector2 } from 'three';
import { HEEL_END, trace, WHOLE } from './sole';

/** The solids that the figure is made of. Lengths in metres, y up, z towards the back. */

const ROUND = 14;

/** A limb from the origin upwards, round at both ends. */
export function limb(length: number, from: number, to: number): BufferGeometry {
  const points: Vector2[] = [];
  for (let i = 0; i <= 5; i++) {
    const angle = (i / 5 - 1) * (Math.PI / 2);
    points.push(new Vector2(Math.cos(angle) * from, Math.sin(angle) * from));
  }
  for (let i = 0; i <= 5; i++) {
    const angle = (i / 5) * (Math.PI / 2);
    points.push(new Vector2(Math.cos(angle) * to, length + Math.sin(angle) * to));
  }
  return new LatheGeometry(points, ROUND);
}

/** A body turned from a profile of radius and height, as deep as a part of its width. */
export function turned(profile: readonly (readonly [number, number])[], depth: number): BufferGeometry {
  // softly from point to point
  const path = new Path();
  path.moveTo(profile[0]![0], profile[0]![1]);
  path.splineThru(profile.slice(1).map(([r, y]) => new Vector2(r, y)));
  return new LatheGeometry(path.getPoints(4), ROUND + 8).scale(1, 1, depth);
}

function soleOf(mirror: 1 | -1): Shape {
  const shape = new Shape();
  trace(WHOLE, shape, mirror, 1);
  return shape;
}

/** The sole laid flat, its ball in the origin, grown about its middle. */
export function flatSole(mirror: 1 | -1, length: number, growth: number): BufferGeometry {
  const middle = (HEEL_END - 0.28) / 2;
  return new ShapeGeometry(soleOf(mirror), 10)
    .translate(0, middle, 0)
    .scale(growth, growth, 1)
    .translate(0, -middle, 0)
    .scale(length, length, 1)
    .rotateX(-Math.PI / 2);
}

// Rings from the edge of the sole to the top of the shoe.
const RINGS = 5;
const TOE_HIGH = 0.036;
const HEEL_HIGH = 0.082;
const SEAM = 0.012;

/**
 * A shoe over the sole, its ball in the origin: the part before the ball, or that behind.
 * @param swell Metres that it is larger all round, for an outline drawn behind it.
 */
export function shoe(mirror: 1 | -1, length: number, isToe: boolean, swell: number): BufferGeometry {
  const outline = soleOf(mirror).getPoints(8).slice(0, -1);
  const count = outline.length;
  const middleX = 0.005 * mirror;
  const middleY = -0.2;
  const seam = swell > 0 ? 0 : SEAM;
  const places: number[] = [];
  const put = (x: number, y: number, up: number) => {
    const forward = y * length;
    const cut = isToe ? Math.max(forward, -seam) : Math.min(forward, seam);
    places.push(x * length, up, -cut);
  };
  const high = (y: number) =>
    HEEL_HIGH + (TOE_HIGH - HEEL_HIGH) * Math.min(1, Math.max(0, (y + HEEL_END) / (0.12 + HEEL_END)));
  for (let ring = 0; ring < RINGS; ring++) {
    const angle = (ring / (RINGS - 1)) * (Math.PI / 2);
    const inward = ring === RINGS - 1 ? 0 : Math.sqrt(Math.cos(angle));
    for (const point of outline) {
      const grow = 1 + swell / (length * Math.max(0.12, Math.hypot(point.x - middleX, point.y - middleY)));
      const x = middleX + (point.x - middleX) * inward * grow;
      const y = middleY + (point.y - middleY) * (0.15 + 0.85 * inward) * grow;
      put(x, y, high(y) * Math.sin(angle) + (ring === 0 ? -swell * 0.2 : swell * Math.sin(angle)));
    }
  }
  const faces: number[] = [];
  const isTurned = area(outline) < 0;
  const isCut = (i: number) => (isToe ? places[i * 3 + 2]! >= seam : places[i * 3 + 2]! <= -seam);
  const face = (a: number, b: number, c: number) => {
    // the wall of the cut would show as a line across the shoe
    if (swell > 0 && isCut(a) && isCut(b) && isCut(c)) return;
    if (isTurned) faces.push(a, c, b);
    else faces.push(a, b, c);
  };
  for (let ring = 0; ring + 1 < RINGS; ring++) {
    for (let i = 0; i < count; i++) {
      const [a, b] = [ring * count + i, ring * count + ((i + 1) % count)];
      face(a, b, a + count);
      face(b, b + count, a + count);
    }
  }
  // the sole itself, seen when the foot is lifted
  const under = places.length / 3;
  put(middleX, isToe ? 0.1 : -0.3, 0);
  for (let i = 0; i < count; i++) face((i + 1) % count, i, under);
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(places), 3));
  geometry.setIndex(faces);
  geometry.computeVertexNormals();
  return geometry;
}

function area(points: readonly Vector2[]): number {
  let sum = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length]!;
    sum += p.x * q.y - q.x * p.y;
  });
  return sum / 2;
}
