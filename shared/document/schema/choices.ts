/** Every word that a trip lets one choose from, for whoever shows a list of them. */
import { beddingSchema, binSchema, edgeSchema, nightStateSchema, purposeSchema } from './kit.ts'
import { ledgerEntrySchema } from './ledger.ts'
import { measuredSchema } from './measured.ts'
import { connectorSchema, lineSystemSchema, pitchSchema } from './nights.ts'
import { travellerSchema } from './travellers.ts'
import { accessClassSchema, phaseSchema, yesNoUnknownSchema } from './values.ts'
import {
  baySchema,
  bedHeaterSchema,
  bedSchema,
  chargingSchema,
  faceSchema,
  heaterSchema,
  leisureSchema,
  thermalSchema,
  vehicleSchema,
} from './vehicle.ts'

export const CHOICES = {
  access: accessClassSchema.options,
  bayKinds: baySchema.shape.kind.options,
  beddingKinds: beddingSchema.shape.kind.options,
  bedHeaters: bedHeaterSchema.shape.kind.options,
  belongsTo: baySchema.shape.belongsTo.options,
  bodies: thermalSchema.shape.bodyClass.options,
  connectors: connectorSchema.options,
  drives: vehicleSchema.shape.drive.options,
  edges: edgeSchema.options,
  faces: faceSchema.options,
  forms: binSchema.shape.form.options,
  headEnds: bedSchema.shape.headEnd.options,
  heaters: heaterSchema.shape.kind.options,
  ledgerKinds: ledgerEntrySchema.shape.kind.options,
  inletSides: chargingSchema.shape.inlet.unwrap().shape.side.options,
  leisureKinds: leisureSchema.shape.kind.options,
  lineSystems: lineSystemSchema.options,
  moments: measuredSchema.shape.moment.options,
  nightStates: nightStateSchema.options,
  phases: phaseSchema.options,
  postSides: pitchSchema.shape.postSide.options,
  purposes: purposeSchema.options,
  restraints: baySchema.shape.restraint.options,
  sleeps: travellerSchema.shape.sleeps.options,
  slopesTowards: pitchSchema.shape.slopeDownTowards.options,
  wallFaces: baySchema.shape.slopes.element.shape.face.options,
  yesNo: yesNoUnknownSchema.options,
} as const
