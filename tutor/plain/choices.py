"""What has the student chosen once and for all, and what is said on the command line for this time?"""

from __future__ import annotations

from tutor.plain.voice import Voice
from tutor.records import Keep, Settings, read_settings, write_settings
from tutor.records.settings import ThisTime


class KeptChoices:
    """What the student has chosen and done before, read once and put down at each change."""

    def __init__(self, voice: Voice, keep: Keep, given: ThisTime) -> None:
        self.keep = keep
        self.given = given
        self._voice = voice
        self._folder = keep.folder
        self.settings, notice = read_settings(keep.folder)
        self._say(notice)

    @property
    def guided(self) -> bool:
        """Whether the student is told what comes next and what they can do."""
        return self.settings.guide and not self.given.no_guide

    def guide(self, on: bool) -> None:
        """Whether that is wanted from now on."""
        self.given = self.given._replace(no_guide=False)
        self.settings = self.settings._replace(guide=on)
        self._say(write_settings(self._folder, self.settings))

    def done(self, step: str) -> None:
        """One more passage through a step."""
        self.settings = self.settings.done_right(step)
        self._say(write_settings(self._folder, self.settings))

    def remarks(self, on: bool) -> None:
        """Whether remarks on an easier way are wanted."""
        self.settings = self.settings._replace(remarks=on)
        self._say(write_settings(self._folder, self.settings))

    def again(self) -> Settings:
        """The choices as they are now, after another lesson may have changed them."""
        self.settings, notice = read_settings(self._folder)
        self._say(notice)
        return self.settings

    def _say(self, notice: str) -> None:
        if notice:
            self._voice.say((f"Note: {notice}",))
