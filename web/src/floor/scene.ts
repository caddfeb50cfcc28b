import {
  BackSide,
  type BufferGeometry,
  CanvasTexture,
  Color,
  DirectionalLight,
  DynamicDrawUsage,
  Fog,
  Group,
  HemisphereLight,
  InstancedMesh,
  type Material,
  Mesh,
  MeshBasicMaterial,
  MeshLambertMaterial,
  PerspectiveCamera,
  PlaneGeometry,
  RepeatWrapping,
  Scene as Space,
  SphereGeometry,
  SRGBColorSpace,
  WebGLRenderer,
} from 'three';
import { Camera, type Framing } from './camera';
import type { Colours } from './colours';
import { type Figure, newFigure, PART, type Place, pose, type Size } from './figure';
import { type FootNow, type Moment, type Motion, newMoment } from './motion';
import { flatSole, limb, shoe, turned } from './shapes';
import { HEEL_END } from './sole';
import { type Rows, SPACING, type View } from './views';

/** What is asked of the view of the figure. */
export interface SceneWishes {
  view: View;
  framing: Framing;
  rows: Rows;
  /** Whether nothing may glide. */
  isStill: boolean;
}

const SEES_DEGREES = 28;

// From above the eye level of a seated watcher, so that the feet are seen on the floor: radians.
const TILT = 0.27;
const CLASS_TILT = 0.38;

// Metres that a single dancer needs in the picture, and what is in its middle.
const HIGH = 2.12;
const WIDE = 1.5;
const MIDDLE = 0.8;

const LOOKS_AHEAD_COUNTS = 0.2;

const BOARD = 0.24;
const BOARDS = 4;
const BOARD_LENGTH = 2.4;
const GROUND = 48;

// Just over the floor, one over the other.
const SHADOW_UP = 0.004;
const WEIGHT_UP = 0.008;
const FOOT_UP = 0.01;

const HEAD = ['head', 'nose', 'hair', 'knot'];

// A device that cannot keep up is given fewer dots to draw: seconds a frame, and how few a pixel of the page.
const SLOW_FRAME = 1 / 28;
const FEWER = 0.6;
const FEWEST = 0.7;

/** A solid and the place of it that all dancers share, before each is put in her row. */
interface Part {
  mesh: InstancedMesh;
  place: Float64Array;
}

type Paint = 'shirt' | 'legs' | 'skin' | 'hair' | 'right' | 'left' | 'outline' | 'weight' | 'shadow';

/** The dance danced by a figure, seen from behind, from the front or as in a mirror. */
export class Scene {
  private readonly renderer: WebGLRenderer;
  private readonly space = new Space();
  private readonly eye = new PerspectiveCamera(SEES_DEGREES, 1, 0.1, 60);
  /** Turned over for a mirror. */
  private readonly mirror = new Group();
  /** The room, moved so that what the camera follows is in the middle of the world. */
  private readonly room = new Group();
  private readonly dancers = new Group();
  private readonly paints: Record<Paint, MeshBasicMaterial | MeshLambertMaterial>;
  private readonly ground: Mesh<PlaneGeometry, MeshBasicMaterial>;
  private readonly sky = new HemisphereLight(0xffffff, 0x888888, 2.5);
  private readonly lamp = new DirectionalLight(0xffffff, 0.9);
  private readonly camera = new Camera();
  private readonly now: Moment = newMoment();
  private readonly figure: Figure = newFigure();

  private motion: Motion | null = null;
  private size: Size = { height: 0, heelToBall: 0, leg: 0 };
  private across = 0;
  private deep = 0;
  private parts: Record<string, Part> = {};
  private all: Part[] = [];
  private colours: Colours | null = null;
  private view: View = 'behind';
  private before = NaN;
  private dots = 1;
  private frameSeconds = 0;

  /**
   * @param canvas Where it is drawn.
   * @throws When the browser draws nothing in three dimensions.
   */
  constructor(canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, powerPreference: 'low-power' });
    const basic = () => new MeshBasicMaterial();
    const lit = () => new MeshLambertMaterial();
    this.paints = {
      shirt: lit(),
      legs: lit(),
      skin: lit(),
      hair: lit(),
      right: lit(),
      left: lit(),
      outline: new MeshBasicMaterial({ side: BackSide }),
      weight: basic(),
      shadow: new MeshBasicMaterial({ transparent: true, depthWrite: false, map: blob() }),
    };
    this.ground = new Mesh(new PlaneGeometry(GROUND, GROUND).rotateX(-Math.PI / 2), new MeshBasicMaterial());
    this.lamp.position.set(-2.2, 4, 3);
    this.space.add(this.mirror, this.sky, this.lamp);
    this.mirror.add(this.room);
    this.room.add(this.ground, this.dancers);
  }

  /** Takes another dance. */
  setMotion(motion: Motion | null): void {
    if (!this.motion) this.camera.forget();
    this.motion = motion;
    this.before = NaN;
  }

  /** Takes other colours. */
  setColours(colours: Colours): void {
    this.colours = colours;
    const { paints } = this;
    const mixed = (from: string, to: string, share: number) => new Color(from).lerp(new Color(to), share);
    this.space.background = new Color(colours.paper);
    this.space.fog = new Fog(new Color(colours.paper), 8, 17);
    paints.shirt.color.set(colours.tide);
    paints.legs.color.copy(mixed(colours.soft, colours.floor, 0.12));
    paints.skin.color.copy(mixed(colours.floor, colours.ink, colours.isDark ? 0.72 : 0.2));
    paints.hair.color.copy(mixed(colours.ink, colours.lamp, colours.isDark ? 0.55 : 0.25));
    paints.right.color.set(colours.ink);
    paints.left.color.set(colours.isDark ? colours.floor : colours.paper);
    paints.outline.color.set(colours.ink);
    paints.weight.color.set(colours.lamp);
    paints.shadow.color.set('#000');
    paints.shadow.opacity = colours.isDark ? 0.55 : 0.34;
    this.sky.groundColor.copy(mixed(colours.isDark ? '#fff' : colours.floor, colours.floor, colours.isDark ? 0.45 : 0));
    this.ground.material.map?.dispose();
    this.ground.material.map = boards(colours, this.renderer.capabilities.getMaxAnisotropy());
    this.ground.material.needsUpdate = true;
  }

  /** Takes another size, in pixels of the page. */
  setSize(width: number, height: number, dots: number): void {
    this.dots = dots;
    this.frameSeconds = 0;
    this.renderer.setPixelRatio(dots);
    this.renderer.setSize(width, height, false);
    this.eye.aspect = width / Math.max(1, height);
    this.eye.updateProjectionMatrix();
  }

  /**
   * Draws a moment.
   * @returns Whether the camera is still on its way.
   */
  draw(count: number, seconds: number, wishes: SceneWishes): boolean {
    const { motion, now } = this;
    if (!this.colours) return false;
    this.keepUp(seconds);
    const isEmpty = !motion || motion.isEmpty;
    this.dancers.visible = !isEmpty;
    if (isEmpty) {
      this.look(0, 0, 0, 0, wishes, true);
      this.renderer.render(this.space, this.eye);
      return false;
    }
    this.build(motion, wishes.rows);
    motion.at(count, now);
    pose(now, motion.facingAt(count + LOOKS_AHEAD_COUNTS), motion, this.figure);
    this.dress();
    if (this.before - count > 1) this.camera.shift(motion.leap(this.before, count), WIDE);
    this.before = count;
    const wall = motion.wallAt(count);
    const isWhole = wishes.framing === 'wall';
    const { pelvis } = this.figure;
    const moves = this.look(
      isWhole ? wall.x : pelvis.x,
      isWhole ? wall.y : -pelvis.z,
      wall.facing,
      seconds,
      wishes,
      wishes.isStill,
    );
    this.renderer.render(this.space, this.eye);
    return moves;
  }

  /** The wall at the far side of the picture, in quarters clockwise from 12:00. */
  get farWall(): number {
    return ((Math.round(this.camera.yaw / (Math.PI / 2)) % 4) + 4) % 4;
  }

  /** Gives everything back. */
  dispose(): void {
    this.clear();
    this.space.traverse((thing) => {
      if (!(thing instanceof Mesh)) return;
      (thing.geometry as BufferGeometry).dispose();
      const material = thing.material as MeshBasicMaterial;
      material.map?.dispose();
      material.dispose();
    });
    for (const paint of Object.values<Material>(this.paints)) paint.dispose();
    this.renderer.dispose();
  }

  private look(x: number, y: number, wall: number, seconds: number, wishes: SceneWishes, isAtOnce: boolean): boolean {
    const { camera, eye } = this;
    // another side is a cut, not a ride
    if (wishes.view !== this.view) this.camera.forget();
    this.view = wishes.view;
    const yaw = wall + (wishes.view === 'behind' ? 0 : Math.PI);
    const moves = camera.toward(x, y, yaw, seconds, isAtOnce);
    const isMirrored = wishes.view === 'mirror';
    this.mirror.scale.x = isMirrored ? -1 : 1;
    const sin = Math.sin(camera.yaw);
    const cos = Math.cos(camera.yaw);
    this.room.rotation.y = camera.yaw;
    this.room.position.set(-(camera.x * cos - camera.y * sin), 0, camera.x * sin + camera.y * cos);
    const { across, deep } = wishes.rows;
    const isClass = across * deep > 1;
    const ground = wishes.framing === 'wall' && this.motion ? Math.max(this.motion.across, this.motion.deep) : 0;
    const wide = WIDE + (Math.max(across, deep) - 1) * SPACING + ground;
    const tilt = isClass ? CLASS_TILT : TILT;
    const half = Math.tan((SEES_DEGREES * Math.PI) / 360);
    const forHeight = (HIGH + (isClass ? (deep - 1) * SPACING * Math.sin(tilt) : 0) + ground * 0.3) / 2 / half;
    const far = Math.max(forHeight, wide / 2 / (half * eye.aspect)) + (isClass ? ((deep - 1) * SPACING) / 2 : 0);
    eye.position.set(0, MIDDLE + Math.sin(tilt) * far, Math.cos(tilt) * far);
    eye.lookAt(0, MIDDLE, 0);
    const fog = this.space.fog as Fog | null;
    if (fog) {
      fog.near = far + 1.5;
      fog.far = far + 9;
    }
    return moves;
  }

  private keepUp(seconds: number): void {
    if (seconds === 0) return;
    this.frameSeconds += (seconds - this.frameSeconds) * 0.04;
    if (this.frameSeconds < SLOW_FRAME || this.dots * FEWER < FEWEST) return;
    this.dots *= FEWER;
    this.frameSeconds = 0;
    this.renderer.setPixelRatio(this.dots);
  }

  private clear(): void {
    for (const { mesh } of this.all) {
      mesh.geometry.dispose();
      mesh.dispose();
    }
    this.dancers.clear();
    this.parts = {};
    this.all = [];
  }

  // Every dancer of a class is the same solid drawn again.
  private build(motion: Motion, rows: Rows): void {
    const { height, heelToBall, leg } = motion;
    const { size } = this;
    const isSame = size.height === height && size.heelToBall === heelToBall && size.leg === leg;
    if (isSame && this.across === rows.across && this.deep === rows.deep) return;
    this.size = { height, heelToBall, leg };
    this.across = rows.across;
    this.deep = rows.deep;
    this.clear();
    const add = (name: string, geometry: BufferGeometry, paint: Paint, order = 0) => {
      const mesh = new InstancedMesh(geometry, this.paints[paint], rows.across * rows.deep);
      mesh.instanceMatrix.setUsage(DynamicDrawUsage);
      mesh.frustumCulled = false;
      mesh.renderOrder = order;
      this.dancers.add(mesh);
      const part = { mesh, place: new Float64Array(16) };
      this.parts[name] = part;
      this.all.push(part);
    };
    const h = height;
    const length = heelToBall / HEEL_END;
    const thigh = (leg - PART.ankle * h) / 2;
    const torso = (PART.shoulder - 0.53) * h;
    add('shadow', new PlaneGeometry(0.86, 0.66).rotateX(-Math.PI / 2), 'shadow', 1);
    add('leftShadow', new PlaneGeometry(0.26, 0.44).rotateX(-Math.PI / 2), 'shadow', 1);
    add('rightShadow', new PlaneGeometry(0.26, 0.44).rotateX(-Math.PI / 2), 'shadow', 1);
    for (const [side, mirror] of [
      ['left', -1],
      ['right', 1],
    ] as const) {
      add(`${side}Weight`, flatSole(mirror, length, 1.42), 'weight');
      add(`${side}Shoe`, shoe(mirror, length, false, 0), side);
      add(`${side}Toe`, shoe(mirror, length, true, 0), side);
      add(`${side}Thigh`, limb(thigh, 0.077, 0.054), 'legs');
      add(`${side}Shin`, limb(thigh, 0.054, 0.039), 'legs');
      add(`${side}UpperArm`, limb(PART.upperArm * h, 0.047, 0.038), 'shirt');
      add(`${side}Forearm`, limb(PART.forearm * h, 0.034, 0.025), 'skin');
      add(`${side}Hand`, new SphereGeometry(1, 14, 10).scale(0.03, 0.046, 0.034), 'skin');
    }
    add('leftShoeLine', shoe(-1, length, false, 0.011), 'outline');
    add('leftToeLine', shoe(-1, length, true, 0.011), 'outline');
    add('pelvis', new SphereGeometry(1, 26, 18).scale(0.128, 0.1, 0.088), 'legs');
    add(
      'torso',
      turned(
        [
          // open below, over the hips
          [0.182, 0.0],
          [0.164, torso * 0.12],
          [0.128, torso * 0.4],
          [0.142, torso * 0.68],
          [0.168, torso * 0.88],
          [0.16, torso * 0.97],
          [0.108, torso * 1.06],
          [0.048, torso * 1.12],
          [0.001, torso * 1.14],
        ],
        0.69,
      ),
      'shirt',
    );
    add('neck', limb(0.12, 0.042, 0.04), 'skin');
    add('head', new SphereGeometry(1, 22, 16).scale(0.074, 0.098, 0.086), 'skin');
    add('nose', new SphereGeometry(1, 10, 8).scale(0.013, 0.02, 0.022).translate(0, -0.012, -0.086), 'skin');
    add('hair', new SphereGeometry(1, 26, 18).scale(0.083, 0.096, 0.086).translate(0, 0.02, 0.017), 'hair');
    add('knot', new SphereGeometry(0.033, 14, 10).translate(0, 0.03, 0.113), 'hair');
  }

  private dress(): void {
    const { figure: f, now, parts } = this;
    bone(parts.leftThigh!, f.leftHip, f.leftKnee);
    bone(parts.rightThigh!, f.rightHip, f.rightKnee);
    bone(parts.leftShin!, f.leftKnee, f.leftAnkle);
    bone(parts.rightShin!, f.rightKnee, f.rightAnkle);
    bone(parts.leftUpperArm!, f.leftShoulder, f.leftElbow);
    bone(parts.rightUpperArm!, f.rightShoulder, f.rightElbow);
    bone(parts.leftForearm!, f.leftElbow, f.leftHand);
    bone(parts.rightForearm!, f.rightElbow, f.rightHand);
    upright(parts.leftHand!, f.leftHand.x, f.leftHand.y, f.leftHand.z, f.chestAngle, 1);
    upright(parts.rightHand!, f.rightHand.x, f.rightHand.y, f.rightHand.z, f.chestAngle, 1);
    upright(parts.pelvis!, f.pelvis.x, f.pelvis.y + 0.025, f.pelvis.z, f.hipAngle, 1);
    const between = (f.hipAngle + f.chestAngle * 2) / 3;
    upright(parts.torso!, f.chest.x, f.chest.y - (PART.shoulder - 0.53) * this.size.height, f.chest.z, between, 1);
    bone(parts.neck!, f.chest, f.head);
    for (const name of HEAD) upright(parts[name]!, f.head.x, f.head.y, f.head.z, f.headAngle, 1);
    this.foot(now.left, parts.leftShoe!, parts.leftToe!, parts.leftWeight!, parts.leftShadow!);
    this.foot(now.right, parts.rightShoe!, parts.rightToe!, parts.rightWeight!, parts.rightShadow!);
    parts.leftShoeLine!.place.set(parts.leftShoe!.place);
    parts.leftToeLine!.place.set(parts.leftToe!.place);
    upright(parts.shadow!, now.x, SHADOW_UP, -now.y, now.facing, 1);
    for (const part of this.all) this.repeat(part);
  }

  private foot(foot: FootNow, shoePart: Part, toe: Part, weight: Part, shadow: Part): void {
    const { heelToBall } = this.size;
    tilted(shoePart, foot, foot.pitch, heelToBall);
    // toes bend while they are on the floor
    const bent = foot.pitch > 0 ? foot.pitch * Math.min(1, foot.lift / 0.06) : foot.pitch;
    tilted(toe, foot, bent, heelToBall);
    upright(weight, foot.x, WEIGHT_UP, -foot.y, foot.angle, foot.carries ? 1 : 0);
    const behind = heelToBall * 0.3;
    const nearness = Math.max(0.4, 1 - foot.lift * 2);
    upright(
      shadow,
      foot.x - Math.sin(foot.angle) * behind,
      SHADOW_UP * 1.3,
      -(foot.y - Math.cos(foot.angle) * behind),
      foot.angle,
      nearness,
    );
  }

  private repeat({ mesh, place }: Part): void {
    const { array } = mesh.instanceMatrix;
    let at = 0;
    for (let row = 0; row < this.deep; row++) {
      const z = (row - (this.deep - 1) / 2) * SPACING;
      for (let column = 0; column < this.across; column++) {
        const x = (column - (this.across - 1) / 2) * SPACING;
        for (let i = 0; i < 16; i++) array[at + i] = place[i]!;
        array[at + 12]! += x;
        array[at + 14]! += z;
        at += 16;
      }
    }
    mesh.instanceMatrix.needsUpdate = true;
  }
}

// Stands a part at a place, turned clockwise.
function upright({ place }: Part, x: number, y: number, z: number, angle: number, size: number): void {
  const sin = Math.sin(angle) * size;
  const cos = Math.cos(angle) * size;
  fill(place, cos, 0, sin, 0, size, 0, -sin, 0, cos, x, y, z);
}

// Lays a limb between two joints; it is round, so how it is turned about itself is not seen.
function bone({ place }: Part, from: Place, to: Place): void {
  let x = to.x - from.x;
  let y = to.y - from.y;
  let z = to.z - from.z;
  const length = Math.max(1e-6, Math.hypot(x, y, z));
  x /= length;
  y /= length;
  z /= length;
  // square to it and level with the line from 12:00 to 6:00, along which no limb of a standing dancer lies
  const flat = Math.max(1e-6, Math.hypot(y, x));
  const ax = y / flat;
  const ay = -x / flat;
  // the third is square to both
  fill(place, ax, ay, 0, x, y, z, ay * z, -ax * z, ax * y - ay * x, from.x, from.y, from.z);
}

// Puts a shoe on its foot: a raised heel turns about the ball, a raised toe about the heel.
function tilted({ place }: Part, foot: FootNow, pitch: number, heelToBall: number): void {
  const sin = Math.sin(foot.angle);
  const cos = Math.cos(foot.angle);
  const down = Math.sin(pitch);
  const level = Math.cos(pitch);
  // forward and up of the shoe
  const fx = sin * level;
  const fy = -down;
  const fz = -cos * level;
  const ux = sin * down;
  const uy = level;
  const uz = -cos * down;
  const back = pitch < 0 ? heelToBall : 0;
  fill(
    place,
    cos,
    0,
    sin,
    ux,
    uy,
    uz,
    -fx,
    -fy,
    -fz,
    foot.x - sin * back + fx * back,
    foot.lift + FOOT_UP + fy * back,
    -foot.y + cos * back + fz * back,
  );
}

// prettier-ignore
function fill(
  place: Float64Array,
  xx: number, xy: number, xz: number,
  yx: number, yy: number, yz: number,
  zx: number, zy: number, zz: number,
  x: number, y: number, z: number,
): void {
  place[0] = xx; place[1] = xy; place[2] = xz; place[3] = 0;
  place[4] = yx; place[5] = yy; place[6] = yz; place[7] = 0;
  place[8] = zx; place[9] = zy; place[10] = zz; place[11] = 0;
  place[12] = x; place[13] = y; place[14] = z; place[15] = 1;
}

function canvasOf(width: number, height: number): CanvasRenderingContext2D {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d');
  if (!context) throw new Error('This browser gives no canvas to draw on.');
  return context;
}

function blob(): CanvasTexture {
  const context = canvasOf(64, 64);
  const shade = context.createRadialGradient(32, 32, 2, 32, 32, 31);
  shade.addColorStop(0, 'rgba(255,255,255,1)');
  shade.addColorStop(0.5, 'rgba(255,255,255,0.55)');
  shade.addColorStop(1, 'rgba(255,255,255,0)');
  context.fillStyle = shade;
  context.fillRect(0, 0, 64, 64);
  return new CanvasTexture(context.canvas);
}

function boards(colours: Colours, sharpness: number): CanvasTexture {
  const [width, height] = [512, 1024];
  const context = canvasOf(width, height);
  context.fillStyle = colours.floor;
  context.fillRect(0, 0, width, height);
  context.strokeStyle = colours.line;
  context.globalAlpha = 0.45;
  context.lineWidth = 2.5;
  const board = width / BOARDS;
  context.beginPath();
  for (let i = 0; i < BOARDS; i++) {
    context.moveTo(i * board + 1, 0);
    context.lineTo(i * board + 1, height);
    const at = ((i * 0.382) % 1) * height + 8;
    context.moveTo(i * board, at);
    context.lineTo((i + 1) * board, at);
  }
  context.stroke();
  const texture = new CanvasTexture(context.canvas);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.repeat.set(GROUND / (BOARD * BOARDS), GROUND / BOARD_LENGTH);
  texture.anisotropy = Math.min(8, sharpness);
  texture.colorSpace = SRGBColorSpace;
  return texture;
}
