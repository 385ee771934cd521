namespace Coilwright.Workshop.SetUp;

/// <summary>What a set-up says of the batch it is for.</summary>
/// <param name="Name">As the shop calls it.</param>
/// <param name="Coils">Coils wanted.</param>
/// <param name="FirstTag">Tag of its first coil.</param>
/// <param name="LastTag">Tag of its last coil.</param>
/// <param name="Spool">Label of the spool in use; empty when none is named.</param>
/// <param name="SpoolWire">What is known of that spool's wire, in words; empty when nothing is.</param>
/// <param name="RoomKnown">True when the room's temperature was entered, false when the usual one is taken.</param>
public sealed record BatchHeading(string Name, int Coils, string FirstTag, string LastTag, string Spool, string SpoolWire, bool RoomKnown)
{
    /// <summary>Its number and tags in words.</summary>
    public string CoilsWords =>
        Coils == 1
            ? $"1, {FirstTag}"
            : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Coils:#,##0}, {FirstTag} to {LastTag}");

    /// <summary>Its spool in words.</summary>
    public string SpoolWords =>
        (Spool, SpoolWire) switch
        {
            ("", _) => "none named",
            (_, "") => Spool,
            _ => $"{Spool}, {SpoolWire}",
        };
}
