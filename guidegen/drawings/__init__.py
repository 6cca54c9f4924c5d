"""Pictures of the guide, as SVG text: the schematic and the charts."""
