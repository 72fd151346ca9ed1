import { expect } from '@playwright/test'

/** Waits for what the keeper would see, however busy the machine is. */
export const seen = expect.configure({ timeout: 30_000 })
