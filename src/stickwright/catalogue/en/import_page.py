"""The page 'Import': a case folder becomes a visit; in English."""

from __future__ import annotations

from stickwright.catalogue.en import English
from stickwright.codes.import_page import ImportPage
from stickwright.codes.message import Name

__all__ = ["Texts"]


class Texts(ImportPage):
    """The page 'Import': a case folder becomes a visit."""

    w: English

    def title(self) -> str:
        return "Import a case folder"

    def lead(self) -> str:
        return "A case folder becomes a visit here. Its files are kept as they are, and problems in them are listed."

    def third_axis_before(self) -> str:
        return "A recording may have a third axis in a column"

    def third_axis_after(self) -> str:
        return ": tremor is then measured from all three axes."

    def into(self) -> str:
        return "Import to"

    def into_kept(self) -> str:
        return "Saved records"

    def into_kept_hint(self) -> str:
        return "There is consent to keep it, or you will record it."

    def into_unkept(self) -> str:
        return "Not saved"

    def into_unkept_hint(self) -> str:
        return "Deleted when you close the app."

    def into_demo(self) -> str:
        return "Demo"

    def file(self) -> str:
        return "Case folder as a ZIP file"

    def file_hint(self, *, most_mb: int) -> str:
        return f"At most {self.w.whole(most_mb)} MB unzipped."

    def folder(self) -> str:
        return "Or the folder on this computer"

    def take(self) -> str:
        return "Import"

    def done(self) -> str:
        return "Case folder imported."

    def no_file(self) -> str:
        return "Choose a ZIP file, or enter the path of the folder."

    def no_folder(self, *, folder: Name) -> str:
        return f"There is no folder {self.w.name(folder)} on this computer."

    def no_player(self, *, folder: Name) -> str:
        return f"{self.w.name(folder)} has no player.toml. Enter the folder that holds it."

    def folder_too_large(self, *, folder: Name, most_files: int, most_mb: int) -> str:
        return (
            f"{self.w.name(folder)} has more than {self.w.whole(most_files)} files or {self.w.whole(most_mb)} MB. "
            "Enter one case folder."
        )

    def too_many(self, *, files: int, most: int) -> str:
        return f"It holds {self.w.whole(files)} files; {self.w.whole(most)} are allowed. Zip one case folder."

    def too_large(self, *, most_mb: int) -> str:
        return f"It holds more than {self.w.whole(most_mb)} MB unzipped. Zip one case folder."

    def damaged(self) -> str:
        return (
            "This ZIP file is damaged, has a password or is not a ZIP file. Zip the folder again and choose that file."
        )

    def bad_name(self, *, name: Name) -> str:
        return f"The file name {self.w.name(name)} is not allowed. Zip the folder again."

    def twice(self, *, name: Name) -> str:
        return f"It holds two files named {self.w.name(name)}. Zip the folder again."

    def no_player_in_zip(self) -> str:
        return "It has no player.toml. Zip the folder that holds player.toml."
