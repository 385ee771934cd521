namespace Coilwright.Workshop.Pieces.Events;

/// <summary>The end of a repair: mended, or given up.</summary>
public abstract record ClosingEvent : PieceEvent
{
    /// <summary>What it cost, as the shop writes it.</summary>
    public string Cost { get; init; } = "";

    /// <summary>Text for the customer.</summary>
    public string Answer { get; init; } = "";

    public override string CostSaid => Cost;

    public override string AnswerSaid => Answer;
}
