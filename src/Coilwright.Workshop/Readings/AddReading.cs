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
}
