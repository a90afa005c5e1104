import { useRef } from 'react'
import { Button } from 'react-aria-components/Button'

type PhotoButtonProps = {
  readonly children: string
  readonly label?: string
  readonly several?: boolean
  readonly className?: string
  readonly isDisabled: boolean
  readonly onFiles: (files: readonly File[]) => void
}

/** A button that opens the camera or the pictures of the device. */
export const PhotoButton = ({
  children,
  label = children,
  several = false,
  className = 'key',
  isDisabled,
  onFiles,
}: PhotoButtonProps) => {
  const input = useRef<HTMLInputElement>(null)
  const choose = (list: FileList | null): void => {
    const files = [...(list ?? [])]
    // The same one can be chosen again.
    if (input.current !== null) input.current.value = ''
    if (files.length > 0) onFiles(files)
  }
  return (
    <>
      <Button className={className} isDisabled={isDisabled} onPress={() => input.current?.click()} aria-label={label}>
        {children}
      </Button>
      <input
        ref={input}
        type="file"
        accept="image/jpeg,image/png,image/webp"
        multiple={several}
        className="unseen"
        tabIndex={-1}
        aria-label={label}
        onChange={(event) => choose(event.target.files)}
      />
    </>
  )
}
