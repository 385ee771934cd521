namespace Coilwright.Physics.BoundaryElements;

/// <summary>What is said of parts that are cut more coarsely than their shape asks for.</summary>
internal static class CutNotes
{
    public static IEnumerable<FieldNote> Describe(IEnumerable<MagneticBody> bodies) =>
        bodies.Any(body => body.Material.ShapeError >= FieldSettings.CoarseError)
            ?
            [
                new FieldNote(
                    "coils",
                    "so many, so slender or so flat poles and bars are cut more coarsely than their shapes ask for: inductance and loss "
                        + "of the cores may be off by a tenth, and their intervals say so"
                ),
            ]
            : [];
}
