"""What holds for the project as a whole: its floors, its layout, its packaging."""
