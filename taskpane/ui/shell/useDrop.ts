import { useState, type DragEvent } from "react";

interface Drop {
  /** Files are held over the page. */
  readonly isDragging: boolean;
  readonly on: {
    readonly onDragOver: (event: DragEvent) => void;
    readonly onDragLeave: (event: DragEvent) => void;
    readonly onDropCapture: (event: DragEvent) => void;
  };
}

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes("Files");

/** Files that are let go over the page. */
export function useDrop(onFiles: (files: FileList) => void): Drop {
  const [isDragging, setDragging] = useState(false);
  return {
    isDragging,
    on: {
      onDragOver: (event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        setDragging(true);
      },
      onDragLeave: (event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setDragging(false);
      },
      onDropCapture: (event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        setDragging(false);
        onFiles(event.dataTransfer.files);
      },
    },
  };
}
