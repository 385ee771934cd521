using Coilwright.Workshop.Magnets;

namespace Coilwright.Workshop.Steps;

/// <summary>One step of a recipe's way from coil to customer.</summary>
/// <param name="Name">Word for the step, for example "potting".</param>
/// <param name="Least">Shortest time it takes; zero when it has none.</param>
/// <param name="Most">Longest time it may take; null when it has none.</param>
/// <param name="HoldAfter">How long nothing may follow after it; zero when at once.</param>
/// <param name="HoldReason">What happens meanwhile, for example "wax sets and cools".</param>
/// <param name="Cautions">What to warn of where the step is printed.</param>
public sealed record StepPlan(
    string Name,
    TimeSpan Least,
    TimeSpan? Most,
    TimeSpan HoldAfter,
    string HoldReason,
    IReadOnlyList<string> Cautions
)
{
    /// <summary>Word of the usual step in which magnets go in and are charged.</summary>
    public const string Magnets = "magnets";

    /// <summary>The charge that the recipe asks for in this step; null when it asks for none.</summary>
    public RequiredCharge? Charge { get; init; }

    /// <summary>True for a step in which magnets are charged or knocked down: the usual one, and one that asks for a charge.</summary>
    public bool ChargesMagnets => Name == Magnets || Charge is not null;
}
