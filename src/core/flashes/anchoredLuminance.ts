/**
 * Signal (0 black, 1 peak) → cd/m² of the display that the anchors of the 2005 text of ITU-R
 * BT.1702 belong to (234 mV = 20.1, 631 mV = 160): 413.435·(0.002745·c + 0.0189623)^2.2 with c 0…255
 * (formula from memory; it gives the anchors, test/vectors/flashes.json).
 */
export const anchoredLuminance = (signal: number): number =>
  413.435 * Math.max(0.002745 * 255 * signal + 0.0189623, 0) ** 2.2
