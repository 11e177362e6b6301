import AxeBuilder from '@axe-core/playwright'
import { expect, type Locator, type Page } from '@playwright/test'

/** Opens the sample reel and goes to the cue that begins at a timecode. */
export const openSampleAt = async (page: Page, timecode: RegExp): Promise<void> => {
  await page.goto('./')
  await page.getByRole('button', { name: 'Open the sample reel' }).click()
  await page.getByRole('row', { name: timecode }).click()
  await expect(button(page, 'Show the scanned picture')).toBeEnabled()
}

/** Presses the picture at a place of it, 0…1 across and down. */
export const pressPicture = async (page: Page, x: number, y: number): Promise<void> => {
  const box = await page.getByRole('img', { name: 'Picture', exact: true }).boundingBox()
  if (!box) throw new Error('there is no picture')
  await page.mouse.click(box.x + x * box.width, box.y + y * box.height)
}

/** Nothing that WCAG 2.2 A and AA rules of axe object to. */
export const isClean = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
}

export const number = (page: Page, name: string): Locator =>
  page.getByRole('spinbutton', { name, exact: true })

/** A number as the field holds it. */
export const shownValue = async (page: Page, name: string): Promise<number> =>
  Number(await number(page, name).getAttribute('aria-valuenow'))

export const setNumber = async (page: Page, name: string, value: string): Promise<void> => {
  await number(page, name).fill(value)
  await number(page, name).press('Enter')
}

/** Drags from the middle of an element, with keys held if given. */
export const dragBy = async (page: Page, of: Locator, x: number, y: number): Promise<void> => {
  const box = await of.boundingBox()
  if (!box) throw new Error('there is nothing to drag')
  const [fromX, fromY] = [box.x + box.width / 2, box.y + box.height / 2]
  await page.mouse.move(fromX, fromY)
  await page.mouse.down()
  await page.mouse.move(fromX + x / 2, fromY + y / 2)
  await page.mouse.move(fromX + x, fromY + y)
  await page.mouse.up()
}

export const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole('button', { name, ...(typeof name === 'string' && { exact: true }) })

/** How many steps can be undone, as the head of the screen says. */
export const undoCount = async (page: Page): Promise<number> =>
  Number(/\d+/u.exec((await button(page, /^Undo/u).textContent()) ?? '')?.[0] ?? 0)
