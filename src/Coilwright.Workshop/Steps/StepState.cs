namespace Coilwright.Workshop.Steps;

/// <summary>Where a piece stands, for the board.</summary>
public enum StepState
{
    /// <summary>The next step may begin.</summary>
    MayMove,

    /// <summary>A step goes on and has not had its shortest time.</summary>
    Running,

    /// <summary>A step goes on and may end.</summary>
    MayEnd,

    /// <summary>A step goes on beyond its longest time.</summary>
    Late,

    /// <summary>A hold runs.</summary>
    Held,

    /// <summary>Every step is done.</summary>
    Done,
}
