import '@fontsource-variable/inter'
import '../ui/styles/app.css'
import '../ui/styles/cue.css'
import '../ui/styles/flashes.css'
import '../ui/styles/framing.css'
import '../ui/styles/handover.css'
import '../ui/styles/agree.css'
import '../ui/styles/transfer.css'
import '../ui/styles/import.css'
import '../ui/styles/instruments.css'
import '../ui/styles/ledger.css'
import '../ui/styles/lineup.css'
import '../ui/styles/picture.css'
import '../ui/styles/prepare.css'
import '../ui/styles/settings.css'
import '../ui/styles/sheets.css'
import '../ui/styles/solve.css'
import '../ui/styles/compact.css'
import '../ui/styles/surfaces.css'
import { createRoot } from 'react-dom/client'
import { createAppStore } from '../store/appStore.ts'
import { AppView } from '../ui/AppView.tsx'
import { createServices } from './createServices.ts'
import { keepLineUp } from './lineUpDesk.ts'
import { keepMachineLog } from './machineDesk.ts'
import { keepPreferences } from './preferencesDesk.ts'

const root = document.getElementById('root')
if (!root) throw new Error('Bug: the page has no root element')
const store = createAppStore()
keepPreferences(store, () => localStorage)
keepLineUp(store, () => localStorage)
keepMachineLog(store, () => localStorage)
createRoot(root).render(<AppView app={{ store, services: createServices(store) }} />)
