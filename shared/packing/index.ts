/** Engine 1: where every bin and piece goes, what must move to reach it, and how the load becomes a bed. */
export type {
  AccessClass,
  AwayPlace,
  BinMove,
  Changeover,
  Face,
  InnerPacking,
  Layout,
  LayoutName,
  MassReport,
  Move,
  NightPacking,
  NightState,
  PackBay,
  PackBin,
  PackBudget,
  PackCaution,
  PackFault,
  PackLock,
  PackNight,
  PackOpening,
  PackPiece,
  PackTraits,
  PackVehicle,
  PackWeights,
  PackedUnit,
  PackingInput,
  PackingOutcome,
  Placement,
  PoseVerdict,
  Reach,
  Restraint,
  RuleCode,
  UnitCure,
  Unplaced,
  Vec3,
} from './types.ts'
export { packLoad, settlingRounds } from './pack-load.ts'
export { freeVolume, handScene, reachOf, tryPose } from './by-hand.ts'
export type { HandScene, Tried } from './by-hand.ts'
export { packContainer } from './container/search.ts'
export type { BoxType, ContainerBudget, ContainerInput, ContainerPacking, PackedBox } from './container/types.ts'
