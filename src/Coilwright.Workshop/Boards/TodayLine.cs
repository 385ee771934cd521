namespace Coilwright.Workshop.Boards;

/// <summary>Why a person is needed, the most pressing first.</summary>
public enum TodayMark
{
    /// <summary>A bath is too hot.</summary>
    Alarm,

    /// <summary>A run goes wrong: nobody should wind on.</summary>
    Stop,

    /// <summary>The wire of a coil broke, and nothing was done about it.</summary>
    Broke,

    /// <summary>A coil or a piece is held until a person decides.</summary>
    Hold,

    /// <summary>A chart signals and nobody has answered.</summary>
    Drift,

    /// <summary>A series waits for the release of its first piece.</summary>
    First,

    /// <summary>A spool does not finish what is to be wound from it.</summary>
    Short,
}

/// <summary>What a line of the day leads to.</summary>
public enum WorkPlace
{
    /// <summary>A batch.</summary>
    Batch,

    /// <summary>Entry of one coil of a batch.</summary>
    Enter,

    /// <summary>The winder of a batch.</summary>
    Winder,

    /// <summary>A piece.</summary>
    Piece,

    /// <summary>The board of what is in progress.</summary>
    Board,

    /// <summary>The final test of a piece.</summary>
    Test,

    /// <summary>The wire.</summary>
    Spools,
}

/// <summary>The one thing to do about a line.</summary>
/// <param name="Words">What stands on its button.</param>
/// <param name="Place">Where it is done.</param>
/// <param name="Name">Tag, serial or winder; empty where the place needs none.</param>
/// <param name="BatchId">The batch; null where it is about none.</param>
public sealed record WorkLink(string Words, WorkPlace Place, string Name = "", Guid? BatchId = null);

/// <summary>One thing that needs a person.</summary>
/// <param name="Mark">Why.</param>
/// <param name="About">What it is about: "H-12, coil H-001".</param>
/// <param name="Words">What is the matter, in a sentence or two.</param>
/// <param name="Do">What to do about it.</param>
public sealed record TodayLine(TodayMark Mark, string About, string Words, WorkLink Do)
{
    /// <summary>The same without a figure that follows from a recipe; empty where nothing is left.</summary>
    public string Brief { get; init; } = "";
}

/// <summary>Something that falls due.</summary>
/// <param name="AtUtc">When; null for now.</param>
/// <param name="Words">What.</param>
/// <param name="Card">The card that says it.</param>
/// <param name="Do">What to do about it.</param>
public sealed record DueLine(DateTimeOffset? AtUtc, string Words, WorkCard Card, WorkLink Do);
