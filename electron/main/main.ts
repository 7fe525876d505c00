/** Electron's entry: hands Electron's own parts to the start-up and holds nothing itself. */
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell } from 'electron'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { startUp } from './start-up.ts'

await startUp(
  { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell },
  { root: join(dirname(fileURLToPath(import.meta.url)), '../..'), argv: process.argv, folder: process.cwd() },
)
