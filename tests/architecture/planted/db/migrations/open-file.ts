import { useState } from 'react'

export const opened = useState
