"""Writing the guide: a MkDocs run beside the target, a link check, and a swap that cannot half happen.

Only this package touches the output folder, and only it imports MkDocs.
"""

from guidegen.publish.folder import publish
from guidegen.publish.one_file import publish_one_file
from guidegen.publish.pages import Asset, Origin, PageFile, Published

__all__ = ["Asset", "Origin", "PageFile", "Published", "publish", "publish_one_file"]
