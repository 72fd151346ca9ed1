import 'node:fs'
