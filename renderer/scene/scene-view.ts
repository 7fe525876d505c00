/** Draws a scene description with WebGL: four meshes, one frame for each change, none while nothing changes. */
import {
  BufferGeometry,
  DoubleSide,
  Float32BufferAttribute,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  OrthographicCamera,
  Scene,
  ShaderMaterial,
  WebGLRenderer,
} from 'three'
import type { Colours } from '../styles/tokens.ts'
import { FaceBuffer, LineBuffer, toScene } from './buffers.ts'
import { frame, hitBox, screenAxes, viewVector } from './camera.ts'
import type { Camera, Framing } from './camera.ts'
import { drawLabelSheet, placeLabel } from './labels.ts'
import type { LabelSheet } from './labels.ts'
import type { Held } from './hand.ts'
import { palette } from './palette.ts'
import type { Palette } from './palette.ts'
import { FACE_FRAGMENT, FACE_VERTEX, LINE_FRAGMENT, LINE_VERTEX } from './shaders.ts'
import { blendPoses, posesOf } from './poses.ts'
import type { Poses } from './poses.ts'
import type { Box, HatchRank, SceneDescription, SceneUnit, Vec3 } from './types.ts'

const FAR_MM = 20_000
/** Hatch spacing by rank, mm: open is at hand, dense is deep. */
const SPACING_MM: Readonly<Record<HatchRank, number>> = { 0: 0, 1: 70, 2: 42, 3: 24 }
const SOLID_HATCH_MM = 46
/** Names smaller than this on the screen are left to the list, px. */
const SMALLEST_LABEL_PX = 11.5

/** What is in the hand, as far as it is drawn. */
export type HeldBoxes = Pick<Held, 'unitId' | 'box' | 'lands' | 'verdict'>

export class SceneView {
  private readonly renderer: WebGLRenderer
  private readonly scene = new Scene()
  private readonly eye = new OrthographicCamera()
  private readonly faces: Mesh
  private readonly ghosts: Mesh
  private readonly lines: LineSegments
  private readonly labels: Mesh
  private readonly labelMaterial = new MeshBasicMaterial({ transparent: true, depthWrite: false, side: DoubleSide })
  private readonly section = { value: FAR_MM }
  private sheet: LabelSheet | null = null
  private sheetKey = ''
  private description: SceneDescription | null = null
  private held: HeldBoxes | null = null
  private camera: Camera
  private colours: Colours
  private fontFamily: string
  private shown: Poses = new Map()
  private from: Poses = new Map()
  private target: Poses = new Map()
  private startedMs = 0
  private durationMs = 0
  private frame = 0
  private widthPx = 1
  private heightPx = 1
  private frames = 0
  /** Whether what stands where, or its colours, changed since the boxes were last laid out; turning the whole leaves them. */
  private moved = true

  constructor(canvas: HTMLCanvasElement, camera: Camera, colours: Colours, fontFamily: string) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, alpha: true, powerPreference: 'low-power' })
    this.camera = camera
    this.colours = colours
    this.fontFamily = fontFamily
    const faceMaterial = (alpha: number): ShaderMaterial =>
      new ShaderMaterial({
        vertexShader: FACE_VERTEX,
        fragmentShader: FACE_FRAGMENT,
        uniforms: { alpha: { value: alpha }, section: this.section },
        side: DoubleSide,
        transparent: alpha < 1,
        depthWrite: alpha === 1,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 2,
      })
    this.faces = new Mesh(new BufferGeometry(), faceMaterial(1))
    this.ghosts = new Mesh(new BufferGeometry(), faceMaterial(0.32))
    this.lines = new LineSegments(
      new BufferGeometry(),
      new ShaderMaterial({
        vertexShader: LINE_VERTEX,
        fragmentShader: LINE_FRAGMENT,
        uniforms: { section: this.section },
      }),
    )
    this.labels = new Mesh(new BufferGeometry(), this.labelMaterial)
    this.ghosts.renderOrder = 1
    this.labels.renderOrder = 2
    for (const part of [this.faces, this.ghosts, this.lines, this.labels]) {
      part.frustumCulled = false
      this.scene.add(part)
    }
  }

  /** Shows a description; units glide to their new places over `durationMs`, from wherever they are now. */
  show(description: SceneDescription, durationMs: number): void {
    this.description = description
    this.from = this.shown
    this.target = posesOf(description)
    this.durationMs = this.from.size === 0 ? 0 : durationMs
    this.startedMs = performance.now()
    this.moved = true
    this.invalidate()
  }

  /** Shows a unit in the hand and where it would come to stand; null puts it back. */
  hold(held: HeldBoxes | null): void {
    this.held = held
    this.moved = true
    this.invalidate()
  }

  look(camera: Camera): void {
    this.camera = camera
    this.invalidate()
  }

  dress(colours: Colours, fontFamily: string): void {
    this.colours = colours
    this.fontFamily = fontFamily
    this.sheetKey = ''
    this.moved = true
    this.invalidate()
  }

  /** Hides everything forward of this, mm; the whole length where null. */
  cutAt(sectionMm: number | null): void {
    this.section.value = sectionMm ?? FAR_MM
    this.invalidate()
  }

  resize(widthPx: number, heightPx: number, pixelRatio: number): void {
    this.widthPx = Math.max(1, widthPx)
    this.heightPx = Math.max(1, heightPx)
    this.renderer.setPixelRatio(pixelRatio)
    this.renderer.setSize(this.widthPx, this.heightPx, false)
    this.invalidate()
  }

  /** Millimetres of the scene under one pixel. */
  scaleMmPerPx(): number {
    return this.framing().mmPerPx
  }

  /** The unit under a point of the canvas, px from its upper left. */
  unitAt(xPx: number, yPx: number): string | null {
    if (this.description === null) return null
    const direction = viewVector(this.camera)
    const { right, up } = screenAxes(this.camera)
    const { middleMm: middle, mmPerPx: scale } = this.framing()
    const acrossMm = (xPx - this.widthPx / 2) * scale
    const upMm = (this.heightPx / 2 - yPx) * scale
    const origin = [0, 1, 2].map((axis) => {
      const a = axis as 0 | 1 | 2 // the three indexes of a point
      return middle[a] + right[a] * acrossMm + up[a] * upMm - direction[a] * (FAR_MM / 2)
    })
    const start: Vec3 = [origin[0] ?? 0, origin[1] ?? 0, origin[2] ?? 0]
    let best: { readonly id: string; readonly distance: number } | null = null
    for (const unit of this.description.units) {
      if (unit.box.atMm[0] > this.section.value) continue
      const distance = hitBox(start, direction, unit.box)
      if (distance !== null && (best === null || distance < best.distance)) best = { id: unit.id, distance }
    }
    return best?.id ?? null
  }

  dispose(): void {
    cancelAnimationFrame(this.frame)
    for (const part of [this.faces, this.ghosts, this.lines, this.labels]) part.geometry.dispose()
    this.sheet?.texture.dispose()
    this.renderer.dispose()
  }

  private invalidate(): void {
    if (this.frame === 0) this.frame = requestAnimationFrame((nowMs) => this.draw(nowMs))
  }

  private draw(nowMs: number): void {
    this.frame = 0
    if (this.description === null) return
    const startMs = performance.now()
    const share = this.durationMs === 0 ? 1 : Math.min(1, Math.max(0, (nowMs - this.startedMs) / this.durationMs))
    this.shown = blendPoses(this.from, this.target, share)
    this.placeEye()
    if (this.moved) this.fill(this.description)
    this.fillLabels(this.description)
    this.renderer.render(this.scene, this.eye)
    this.frames += 1
    this.tellFrame(performance.now() - startMs)
    this.moved = share < 1
    if (this.moved) this.invalidate()
  }

  /** Written on the canvas for whoever measures: frames so far, draw calls and the work of the last one, ms. */
  private tellFrame(workMs: number): void {
    const { dataset } = this.renderer.domElement
    dataset['frames'] = String(this.frames)
    dataset['drawCalls'] = String(this.renderer.info.render.calls)
    dataset['workMs'] = workMs.toFixed(2)
  }

  private framing(): Framing {
    return frame(this.camera, this.description?.outline ?? [], this.widthPx, this.heightPx)
  }

  private placeEye(): void {
    const { middleMm: middle, mmPerPx: scale } = this.framing()
    const halfWide = (this.widthPx * scale) / 2
    const halfHigh = (this.heightPx * scale) / 2
    const view = viewVector(this.camera)
    const { up } = screenAxes(this.camera)
    const at: Vec3 = [middle[0] - view[0] * FAR_MM, middle[1] - view[1] * FAR_MM, middle[2] - view[2] * FAR_MM]
    Object.assign(this.eye, {
      left: -halfWide,
      right: halfWide,
      top: halfHigh,
      bottom: -halfHigh,
      near: 1,
      far: 2 * FAR_MM,
    })
    this.eye.position.set(...toScene(at))
    this.eye.up.set(...toScene(up))
    this.eye.lookAt(...toScene(middle))
    this.eye.updateProjectionMatrix()
  }

  private fill(description: SceneDescription): void {
    const faces = new FaceBuffer()
    const ghosts = new FaceBuffer()
    const lines = new LineBuffer()
    const paint = palette(this.colours)
    for (const bay of description.bays) {
      for (const edge of bay.edges) lines.addSegment(edge, bay.outside ? paint.rule : paint.outline)
      for (const jamb of bay.jambs) lines.addSegment(jamb, paint.ink)
      for (const solid of bay.hatched) {
        lines.addBox(solid, paint.outline)
        lines.addHatch(solid, SOLID_HATCH_MM, paint.rule)
      }
    }
    for (const line of description.body) lines.addSegment(line, paint.rule)
    for (const wheel of description.wheels) lines.addWheel(wheel.centreMm, wheel.radiusMm, paint.rule)
    if (description.bed !== null) {
      ghosts.addBox(description.bed, [paint.bed, paint.bed, paint.bed], paint.outline, 0)
      lines.addBox(description.bed, paint.outline)
    }
    for (const unit of description.units) this.addUnit(unit, faces, lines, paint)
    for (const ghost of description.ghosts) {
      ghosts.addBox(ghost.box, [paint.unit, paint.shade, paint.dark], paint.ink, 0)
      lines.addBox(ghost.box, paint.accent)
    }
    if (this.held !== null) addHeld(this.held, ghosts, lines, paint)
    setFaces(this.faces.geometry, faces)
    setFaces(this.ghosts.geometry, ghosts)
    setLines(this.lines.geometry, lines)
  }

  private addUnit(unit: SceneUnit, faces: FaceBuffer, lines: LineBuffer, paint: Palette): void {
    const box = this.shown.get(unit.id) ?? unit.box
    if (unit.id === this.held?.unitId) {
      lines.addBox(box, paint.rule)
      return
    }
    if (unit.role === 'in-the-way') {
      lines.addBox(box, paint.accent)
      return
    }
    const lit = unit.role === 'chosen' || unit.role === 'moved'
    const tones = lit
      ? ([paint.chosen, paint.chosen, paint.chosen] as const)
      : ([paint.unit, paint.shade, paint.dark] as const)
    faces.addBox(box, tones, paint.outline, SPACING_MM[unit.rank])
    lines.addBox(box, lit ? paint.accent : paint.ink)
  }

  /** Where a unit is drawn now: in the hand, on its way, or where it stands. */
  private boxOf(unit: SceneUnit, { ghosts }: SceneDescription): Box {
    if (unit.id === this.held?.unitId) return this.held.box
    return ghosts.includes(unit) ? unit.box : (this.shown.get(unit.id) ?? unit.box)
  }

  private fillLabels(description: SceneDescription): void {
    const named = [...description.units.filter((unit) => unit.role !== 'in-the-way'), ...description.ghosts]
    const names = [...new Set(named.map((unit) => unit.name))].sort()
    const key = names.join('\n')
    if (this.sheet === null || key !== this.sheetKey) {
      this.sheet?.texture.dispose()
      this.sheet = drawLabelSheet(names, this.fontFamily, this.colours.ink, this.colours.unit)
      this.sheetKey = key
      this.labelMaterial.map = this.sheet.texture
      this.labelMaterial.needsUpdate = true
    }
    const view = viewVector(this.camera)
    const smallestMm = SMALLEST_LABEL_PX * this.scaleMmPerPx()
    const positions: number[] = []
    const uvs: number[] = []
    const indices: number[] = []
    for (const unit of named) {
      const cells = this.sheet.cells.get(unit.name)
      const box = this.boxOf(unit, description)
      if (cells === undefined || box.atMm[0] > this.section.value) continue
      const placed = placeLabel(box, cells, view, smallestMm)
      if (placed === null) continue
      const { quad, cell } = placed
      const first = positions.length / 3
      for (const [a, b] of [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ] as const) {
        const corner = (axis: 0 | 1 | 2): number => quad.centre[axis] + a * quad.along[axis] + b * quad.up[axis]
        positions.push(...toScene([corner(0), corner(1), corner(2)]))
      }
      uvs.push(cell.u0, cell.v0, cell.u1, cell.v0, cell.u1, cell.v1, cell.u0, cell.v1)
      indices.push(first, first + 1, first + 2, first, first + 2, first + 3)
    }
    const geometry = this.labels.geometry
    geometry.setAttribute('position', new Float32BufferAttribute(positions, 3))
    geometry.setAttribute('uv', new Float32BufferAttribute(uvs, 2))
    geometry.setIndex(indices)
  }
}

/** In the hand: as it is held, hatched where it may not stand, and the place where it would come to stand. */
function addHeld({ box, lands, verdict }: HeldBoxes, ghosts: FaceBuffer, lines: LineBuffer, paint: Palette): void {
  if (lands !== null) {
    ghosts.addBox(lands, [paint.chosen, paint.chosen, paint.chosen], paint.accent, 0)
    lines.addBox(lands, paint.accent)
  }
  const hatchMm = verdict.legal ? 0 : SPACING_MM[3]
  ghosts.addBox(box, [paint.unit, paint.shade, paint.dark], paint.ink, hatchMm)
  lines.addBox(box, verdict.legal ? paint.ink : paint.accent)
}

function setFaces(geometry: BufferGeometry, buffer: FaceBuffer): void {
  geometry.setAttribute('position', new Float32BufferAttribute(buffer.positions, 3))
  geometry.setAttribute('tone', new Float32BufferAttribute(buffer.colours, 3))
  geometry.setAttribute('ink', new Float32BufferAttribute(buffer.inks, 3))
  geometry.setAttribute('pattern', new Float32BufferAttribute(buffer.patterns, 1))
  geometry.setAttribute('spacing', new Float32BufferAttribute(buffer.spacings, 1))
  geometry.setIndex(buffer.indices)
}

function setLines(geometry: BufferGeometry, buffer: LineBuffer): void {
  geometry.setAttribute('position', new Float32BufferAttribute(buffer.positions, 3))
  geometry.setAttribute('tone', new Float32BufferAttribute(buffer.colours, 3))
}
