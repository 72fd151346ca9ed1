import type { ComponentProps } from 'react'

interface ActionButtonProps extends Omit<ComponentProps<'button'>, 'disabled'> {
  /** Cannot be pressed now, as while it works. */
  readonly off: boolean
}

/** A button that cannot always be pressed. It keeps the focus meanwhile, which a disabled button loses. */
export function ActionButton({ off, onClick, type = 'button', ...rest }: ActionButtonProps) {
  return (
    <button
      {...rest}
      type={type}
      aria-disabled={off}
      onClick={(event) => {
        if (off) event.preventDefault()
        else onClick?.(event)
      }}
    />
  )
}
