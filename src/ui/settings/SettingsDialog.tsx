import {
  Button,
  Dialog,
  Heading,
  Modal,
  ModalOverlay,
  Tab,
  TabList,
  TabPanel,
  Tabs,
} from 'react-aria-components'
import { setOpened } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'
import { KeysSection } from './KeysSection.tsx'
import { ScreenSection } from './ScreenSection.tsx'
import { SurfaceSection } from './SurfaceSection.tsx'

/** What a person sets up once: keys, control surfaces, sizes and hints. */
export const SettingsDialog = () => {
  const { store } = useApp()
  const isOpen = useAppState((state) => state.opened === 'settings')
  const close = () => setOpened(store, undefined)
  return (
    <ModalOverlay
      className="overlay"
      isDismissable
      isOpen={isOpen}
      onOpenChange={(isToBeOpen) => {
        if (!isToBeOpen) close()
      }}
    >
      <Modal className="modal settings">
        <Dialog>
          <div className="settings-head">
            <Heading slot="title">Keys and controls</Heading>
            <Button className="button" onPress={close}>
              Close
            </Button>
          </div>
          <Tabs className="settings-tabs">
            <TabList aria-label="Keys and controls" className="settings-tab-list">
              <Tab id="keys">Keys</Tab>
              <Tab id="surfaces">Control surfaces</Tab>
              <Tab id="screen">Sizes and hints</Tab>
            </TabList>
            <TabPanel id="keys" className="settings-panel">
              <KeysSection />
            </TabPanel>
            <TabPanel id="surfaces" className="settings-panel">
              <SurfaceSection />
            </TabPanel>
            <TabPanel id="screen" className="settings-panel">
              <ScreenSection />
            </TabPanel>
          </Tabs>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
