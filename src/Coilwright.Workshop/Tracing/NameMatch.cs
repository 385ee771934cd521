namespace Coilwright.Workshop.Tracing;

/// <summary>How something asked for matches a name on record.</summary>
public enum NameMatch
{
    /// <summary>It is the name, without regard to letter case.</summary>
    Name,

    /// <summary>It is a coil's number, shorter than its tag is written: C-7 for C-007.</summary>
    Number,

    /// <summary>It is a part of the name.</summary>
    Part,
}
