/**
 * What stands with every result of the flash check. ITU-R BT.1702-3 (11/2023), considering g) and
 * note 5: the risk cannot be eliminated completely, and analysers are a help for alerting staff.
 */
export const FLASH_CAUTION =
  'This is a check beforehand: it does not replace the flash and pattern test that the receiving ' +
  'broadcaster or platform has approved. Passing here is not a pass there, and no test removes ' +
  'all risk.'
