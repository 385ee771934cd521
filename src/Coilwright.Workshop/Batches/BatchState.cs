namespace Coilwright.Workshop.Batches;

/// <summary>Where a batch stands.</summary>
public enum BatchState
{
    /// <summary>Coils are to be wound or read yet.</summary>
    UnderWay,

    /// <summary>Every coil that is wanted was entered.</summary>
    Done,

    /// <summary>It was ended before its number.</summary>
    Closed,
}
