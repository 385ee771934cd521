namespace Coilwright.Application.Shops;

/// <summary>Serves the invented shop beside the shop that is served: in a file of its own, at an address of its own.</summary>
public interface IDemoServer
{
    /// <summary>How far it is.</summary>
    DemoProgress Progress { get; }

    /// <summary>Begins to make it; nothing when it is under way or stands already, anew after a failure.</summary>
    void Begin();
}

/// <summary>How far the invented shop is.</summary>
/// <param name="Step">Words for what is being made; empty before it was begun and when it is over.</param>
/// <param name="Done">Part that is made, 0 to 1.</param>
/// <param name="Address">Where its pages are; null until they are served.</param>
/// <param name="Failure">Why it could not be made; empty unless it failed.</param>
public sealed record DemoProgress(string Step, double Done, Uri? Address, string Failure)
{
    /// <summary>Nobody has asked for it.</summary>
    public static DemoProgress NotBegun { get; } = new("", 0, null, "");

    /// <summary>It is being made.</summary>
    public bool IsMaking => Step.Length > 0;
}
