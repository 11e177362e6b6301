/** The version of this program: that of package.json, which a test holds it to. */
export const PROGRAM_VERSION = '0.1.0'
