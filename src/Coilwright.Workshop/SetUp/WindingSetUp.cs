using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.SetUp;

/// <summary>What a paper says of where it comes from.</summary>
/// <param name="Shop">Name of the shop, or empty.</param>
/// <param name="Revision">Letter of the recipe's revision, or empty when it stands in no shop's book.</param>
/// <param name="Date">Day of printing at the shop; null leaves it out.</param>
public sealed record SheetHeading(string Shop = "", string Revision = "", DateOnly? Date = null);

/// <summary>Everything the person at the winder sets before the first turn, for every coil of one recipe.</summary>
public sealed record WindingSetUp
{
    /// <summary>Room temperature taken when none is given, °C; common practice, no source.</summary>
    public const double UsualRoomC = 23;

    public required string RecipeName { get; init; }
    public SheetHeading Heading { get; init; } = new();

    /// <summary>The batch it is for; null for a recipe's own set-up.</summary>
    public BatchHeading? Batch { get; init; }

    /// <summary>Name of the winder, or empty.</summary>
    public string Machine { get; init; } = "";

    /// <summary>The winder's data; null when only a name is known.</summary>
    public Machine? On { get; init; }

    /// <summary>Real turns per count of the counter; 1 until the machine's marked test has been recorded.</summary>
    public double CounterCorrection => On?.Counter?.Correction.Value ?? 1;

    /// <summary>False for a machine that is run by the clock.</summary>
    public bool HasCounter => On?.Kind != MachineKind.Timed;

    /// <summary>Where <see cref="CounterCorrection"/> comes from, in words.</summary>
    public string CorrectionBasis =>
        (On, IsForNoWinder) switch
        {
            ({ } on, _) => on.Counter?.Words ?? "(100-turn test not yet made)",
            (_, true) => "(for no winder: no counter's correction is in it)",
            _ => "(this winder is not on record: its counter is taken as true)",
        };

    /// <summary>True when no winder is named: its stop is in real turns and must not be set on a counter as it stands.</summary>
    public bool IsForNoWinder => On is null && Machine.Length == 0;

    /// <summary>What a sheet for no winder warns of.</summary>
    public static string ForNoWinderWords =>
        "For no winder: the stop is in real turns. Set a counter from the sheet of the batch, or from the sheet of a winder.";

    /// <summary>Room temperature that the warm figures stand for, °C.</summary>
    public double RoomC { get; init; } = UsualRoomC;

    public required IReadOnlyList<CoilSetUp> Coils { get; init; }

    /// <summary>The coils' signs; red when they work against each other. Null when the recipe was not at hand.</summary>
    public RecipePhase? Phase { get; init; }

    /// <summary>
    /// True for a secret recipe before those who wind it: the sheet says what must be set at the winder, and nothing that follows from the
    /// recipe.
    /// </summary>
    public bool OnlyWhatIsSet { get; init; }

    /// <summary>True when no coil is forecast to be thicker than its window.</summary>
    public bool Fits => Coils.All(coil => coil.Fill.Fits);

    /// <summary>The set-up of every coil of a recipe.</summary>
    /// <param name="recipe">The recipe as understood.</param>
    /// <param name="model">The same in SI.</param>
    /// <param name="prediction">What is foretold of it.</param>
    /// <param name="machine">Name of the winder, or empty.</param>
    /// <param name="roomC">Room temperature, °C, −40…155.</param>
    /// <param name="on">The winder's data, when it is known.</param>
    public static WindingSetUp For(
        Recipe recipe,
        PickupModel model,
        Prediction prediction,
        string machine = "",
        double roomC = UsualRoomC,
        Machine? on = null
    )
    {
        Require.InRange(roomC, -40, 155);
        return new WindingSetUp
        {
            RecipeName = recipe.Name,
            Machine = on?.Name is { Length: > 0 } known ? known : machine,
            On = on,
            RoomC = roomC,
            Phase = RecipePhase.Of(recipe),
            Coils =
            [
                .. model.Coils.Select(
                    (coil, index) =>
                        CoilSetUp.For(
                            coil,
                            prediction.Coils[index],
                            VerdictLimits.TargetOf(recipe, index, QuantityKey.DcResistance),
                            roomC,
                            on
                        )
                ),
            ],
        };
    }
}
