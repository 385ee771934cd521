namespace Coilwright.Workshop.Entry;

/// <summary>An id that comes again with something else in it: nothing is stored, and the sender is told.</summary>
public static class SentAgain
{
    private const string Before = "this has been sent before with something else in it, and what came first is kept: nothing was changed. ";

    /// <summary>For a reading of a coil.</summary>
    public static Problem Reading { get; } = new("id", Before + "To change it, correct the coil on its page");

    /// <summary>For an event at a winder.</summary>
    public static Problem Event { get; } = new("id", Before + "To change it, undo the event");

    /// <summary>True when this is among the problems.</summary>
    public static bool IsAmong(IReadOnlyList<Problem> problems) => problems.Any(problem => problem == Reading || problem == Event);
}
