"""Make a PDF fit for archiving: a colour profile, metadata as XMP, and a claimed conformance level.

The claim is PDF/A-2b (ISO 19005-2, level B). The level requires, and these pages have: all fonts embedded, one
output intent with an sRGB profile, the same metadata in the info dictionary and as XMP, no transparency, no
encryption, no scripts, no external links. The profile is built by Little CMS through Pillow; its date
is set to the document's, so that equal shows give equal bytes.
"""

import struct
from datetime import datetime
from typing import Any
from xml.sax.saxutils import escape

from reportlab.pdfbase import pdfdoc

_PART, _LEVEL = 2, "B"


def srgb_profile(moment: datetime) -> bytes:
    """A dated ICC profile for sRGB."""
    from PIL import ImageCms

    profile = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    profile[24:36] = struct.pack(">6H", *moment.timetuple()[:6])
    profile[84:100] = bytes(16)  # the profile's digest: absent, which the ICC allows
    return bytes(profile)


def make_archival(document: Any, moment: datetime) -> None:
    """Add output intent and XMP metadata to a reportlab document before it is saved."""
    catalog = document.Catalog
    profile = pdfdoc.PDFStream(
        dictionary=pdfdoc.PDFDictionary({"N": 3}), content=srgb_profile(moment)
    )
    profile.filters = [pdfdoc.PDFZCompress]
    intent = pdfdoc.PDFDictionary(
        {
            "Type": pdfdoc.PDFName("OutputIntent"),
            "S": pdfdoc.PDFName("GTS_PDFA1"),
            "OutputConditionIdentifier": pdfdoc.PDFString("sRGB"),
            "Info": pdfdoc.PDFString("sRGB"),
            "DestOutputProfile": document.Reference(profile),
        }
    )
    catalog.__NoDefault__ = [*catalog.__NoDefault__, "OutputIntents"]
    catalog.OutputIntents = pdfdoc.PDFArray([document.Reference(intent)])
    stream = pdfdoc.PDFStream(
        dictionary=pdfdoc.PDFDictionary(
            {"Type": pdfdoc.PDFName("Metadata"), "Subtype": pdfdoc.PDFName("XML")}
        ),
        content=_xmp(document.info, moment).encode("utf-8"),
    )
    catalog.Metadata = stream


def _xmp(info: Any, moment: datetime) -> str:
    date = moment.strftime("%Y-%m-%dT%H:%M:%S+00:00")
    title, author, subject = (escape(str(each)) for each in (info.title, info.author, info.subject))
    creator, producer, keywords = (
        escape(str(each)) for each in (info.creator, info.producer, info.keywords)
    )
    return f"""<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"
    xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
    xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
   <pdfaid:part>{_PART}</pdfaid:part>
   <pdfaid:conformance>{_LEVEL}</pdfaid:conformance>
   <dc:format>application/pdf</dc:format>
   <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
   <dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>
   <dc:description><rdf:Alt><rdf:li xml:lang="x-default">{subject}</rdf:li></rdf:Alt></dc:description>
   <xmp:CreatorTool>{creator}</xmp:CreatorTool>
   <xmp:CreateDate>{date}</xmp:CreateDate>
   <xmp:ModifyDate>{date}</xmp:ModifyDate>
   <pdf:Producer>{producer}</pdf:Producer>
   <pdf:Keywords>{keywords}</pdf:Keywords>
  </rdf:Description>
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>"""
