namespace Coilwright.Workshop.Readings;

/// <summary>How adding a reading went.</summary>
public enum AddReading
{
    Added,

    /// <summary>The same id was there already, with the same content: sent twice, kept once.</summary>
    AlreadyThere,

    /// <summary>Somebody else superseded that reading first.</summary>
    SupersededByAnother,

    /// <summary>The same id was there already with something else in it; nothing was added or changed.</summary>
    IdTaken,

    /// <summary>The tag was to be a new coil's, and somebody else has used it meanwhile; nothing was added.</summary>
    TagTaken,
}
