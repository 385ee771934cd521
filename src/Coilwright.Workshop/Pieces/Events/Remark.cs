namespace Coilwright.Workshop.Pieces.Events;

/// <summary>What is said of other events, or of the clock that gave them their times: it happens to no piece.</summary>
public abstract record Remark : PieceEvent;
