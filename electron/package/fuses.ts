/** Switches burnt into the packaged program: what it can never be asked to do. Names are those of `@electron/fuses`, version 1. */

export const FUSES = {
  RunAsNode: false,
  EnableCookieEncryption: true,
  EnableNodeOptionsEnvironmentVariable: false,
  EnableNodeCliInspectArguments: false,
  EnableEmbeddedAsarIntegrityValidation: true,
  OnlyLoadAppFromAsar: true,
  LoadBrowserProcessSpecificV8Snapshot: false,
  GrantFileProtocolExtraPrivileges: false,
} as const

/** The same under the names that electron-builder gives them. */
export const BUILDER_FUSES = {
  runAsNode: FUSES.RunAsNode,
  enableCookieEncryption: FUSES.EnableCookieEncryption,
  enableNodeOptionsEnvironmentVariable: FUSES.EnableNodeOptionsEnvironmentVariable,
  enableNodeCliInspectArguments: FUSES.EnableNodeCliInspectArguments,
  enableEmbeddedAsarIntegrityValidation: FUSES.EnableEmbeddedAsarIntegrityValidation,
  onlyLoadAppFromAsar: FUSES.OnlyLoadAppFromAsar,
  loadBrowserProcessSpecificV8Snapshot: FUSES.LoadBrowserProcessSpecificV8Snapshot,
  grantFileProtocolExtraPrivileges: FUSES.GrantFileProtocolExtraPrivileges,
} as const
