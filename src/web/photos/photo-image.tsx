import { useEffect, useState } from 'react'
import { useWaitingNotes } from '../outbox/outbox.ts'
import { photoInBox } from './photo-box.ts'
import { photoAddress } from './send-photo.ts'

/** Addresses of a photograph: on the bench, or on this device while it waits to be sent. */
export const usePhotoAddress = (id: string): ((size: 'large' | 'small') => string | undefined) => {
  const waits = useWaitingNotes().some(({ file }) => file?.key === id)
  const [here, setHere] = useState<string | null>(null)
  useEffect(() => {
    if (!waits) return undefined
    let made: string | null = null
    let isOver = false
    void photoInBox(id).then((blob) => {
      if (blob === null || isOver) return
      made = URL.createObjectURL(blob)
      setHere(made)
    })
    return () => {
      isOver = true
      setHere(null)
      if (made !== null) URL.revokeObjectURL(made)
    }
  }, [id, waits])
  return (size) => (waits ? (here ?? undefined) : photoAddress(id, size))
}

type PhotoImageProps = { readonly id: string; readonly alt: string; readonly className?: string }

/** A photograph as it stands in lists: fetched when it comes into sight, its place kept before. */
export const PhotoImage = ({ id, alt, className }: PhotoImageProps) => {
  const address = usePhotoAddress(id)
  return (
    <img
      src={address('small')}
      alt={alt}
      className={className}
      width={480}
      height={360}
      loading="lazy"
      decoding="async"
    />
  )
}
