export interface BrushBoardOptions {
  readonly boardCover: string
  readonly neckCover: string
  readonly headCover: string
}
