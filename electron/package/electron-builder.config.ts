/** Released builds for three systems, described for electron-builder 26. It is not installed: see DEVELOPERS.md for how to run it. */
import { BUILDER_FUSES } from './fuses.ts'

/** What a trip file is called by the system. Any JSON file can be opened by name; only these endings are claimed: saved trips end in the second. */
const TRIP_FILE = {
  ext: ['kipstow', 'trip.json'],
  name: 'Trip',
  description: 'A trip: load, night and checklist',
  mimeType: 'application/x-kipstow-trip+json',
  role: 'Editor',
}

export default {
  appId: 'org.kipstow.planner',
  productName: 'Kipstow',
  copyright: 'MIT licence',
  directories: { output: 'dist/release', buildResources: 'assets/icons' },
  // The hosts are bundled; pdfmake and the fonts stay packages, found by name at run time.
  files: [
    'package.json',
    'LICENSE',
    'dist/electron/**',
    'dist/preload/**',
    'dist/renderer/**',
    'assets/samples/**',
    'assets/icons/**',
    'assets/licences/**',
  ],
  asar: true,
  electronFuses: BUILDER_FUSES,
  electronLanguages: ['en', 'en-US', 'de'],
  npmRebuild: false,
  fileAssociations: [TRIP_FILE],
  // No update feed: the planner is offline always. A new version is installed over the old one.
  publish: null,
  linux: {
    target: ['AppImage', 'deb'],
    category: 'Utility',
    icon: 'assets/icons/icon-1024.png',
    synopsis: 'Plan load, night and checklist for sleeping in your own vehicle',
  },
  mac: {
    target: ['dmg', 'zip'],
    category: 'public.app-category.utilities',
    icon: 'assets/icons/icon-1024.png',
    hardenedRuntime: true,
    darkModeSupport: true,
  },
  win: { target: ['nsis', 'zip'], icon: 'assets/icons/icon-1024.png' },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
}
