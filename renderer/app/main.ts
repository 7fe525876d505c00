/** Where the window begins: finds its host, makes its stores, mounts. */
import { createPinia } from 'pinia'
import { createApp } from 'vue'
import { connectHost } from '../host/index.ts'
import { createPlanCaller } from '../workers/index.ts'
import '../styles/tokens.css'
import '../styles/base.css'
import '../styles/sheet.css'
import '../styles/print.css'
import './fonts.css'
import App from './App.vue'
import { startWindow } from './start.ts'

const pinia = createPinia()
const quick = createPlanCaller()
// Its code is read on another core while the window draws its first controls.
quick.warm()
const { i18n, install } = startWindow({
  pinia,
  host: connectHost(),
  callers: { quick, thorough: createPlanCaller(), beside: createPlanCaller() },
  nowUtc: () => Math.floor(Date.now() / 1000),
})
const app = createApp(App)
app.use(pinia).use(i18n)
install(app)
app.mount('#app')
