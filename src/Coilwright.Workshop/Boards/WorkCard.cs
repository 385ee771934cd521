using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Steps;

namespace Coilwright.Workshop.Boards;

/// <summary>One card of the board: a basket in its bath, a mix of ink, or pieces of one recipe that stand alike.</summary>
public sealed record WorkCard
{
    /// <summary>The step that goes on, or the one that comes next; empty when every step is done.</summary>
    public required string Station { get; init; }

    /// <summary>"Basket K2", "Ink mix I-8", "2649-004 to 2649-006".</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in a line.</summary>
    public required string About { get; init; }

    /// <summary>How it stands now.</summary>
    public required StepStatus Status { get; init; }

    /// <summary>How that turns by time alone.</summary>
    public IReadOnlyList<StepTurn> Ahead { get; init; } = [];

    /// <summary>The bath's alarm while it stands; null when none does.</summary>
    public string? Alarm { get; init; }

    /// <summary>The pieces it is about; none for a mix.</summary>
    public IReadOnlyList<PieceSnapshot> Pieces { get; init; } = [];

    /// <summary>The basket; null for anything else.</summary>
    public BasketStatus? Basket { get; init; }

    /// <summary>The mix; null for anything else.</summary>
    public InkMix? Mix { get; init; }

    /// <summary>True when no clock lets it go on: a person has to do something about it.</summary>
    public bool NeedsPerson => Alarm is not null || Status.NeedsPerson;

    /// <summary>True when something may be done now, or should have been.</summary>
    public bool IsDue => !NeedsPerson && Status.State is StepState.MayMove or StepState.MayEnd or StepState.Late;

    /// <summary>What is due and when, for a list of the day.</summary>
    public string Due =>
        this switch
        {
            { Mix: not null } => $"{Name} must be thrown away",
            { Basket: not null, Status.State: StepState.Late } => $"{Name} is too long in the {Basket.Record.Kind}",
            { Basket: not null } => $"{Name} may come out of the {Basket.Record.Kind}",
            { Status.State: StepState.MayMove } => $"{Name} {Verb("waits", "wait")} for {Station}",
            { Status.State: StepState.MayEnd } => $"{Name}: {Station} may end",
            { Status.State: StepState.Late } => $"{Name} {Verb("is", "are")} late: {Station}",
            { Status.State: StepState.Running } => $"{Name}: {Station} may end",
            _ => $"{Name} may go on to {Station}",
        };

    private string Verb(string one, string several) => Pieces.Count == 1 ? one : several;
}

/// <summary>One column of the board.</summary>
/// <param name="Step">Word for the step.</param>
/// <param name="Cards">Its cards, the most pressing first.</param>
public sealed record WorkStation(string Step, IReadOnlyList<WorkCard> Cards)
{
    /// <summary>What to warn of where this step is done on these pieces.</summary>
    public IReadOnlyList<string> Cautions =>
        [
            .. Cards
                .SelectMany(card => card.Pieces)
                .SelectMany(piece => piece.Plans)
                .Where(plan => plan.Name == Step)
                .SelectMany(plan => plan.Cautions)
                .Distinct(),
        ];

    /// <summary>Pieces that stand here.</summary>
    public int Pieces => Cards.Sum(card => card.Pieces.Count);
}
