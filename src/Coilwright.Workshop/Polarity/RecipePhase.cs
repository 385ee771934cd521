using Coilwright.Physics;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Polarity;

/// <summary>The signs of a recipe's coils and what follows, before any wire is wound.</summary>
/// <param name="Coils">The signs, in the recipe's order.</param>
/// <param name="Together">The answer for all coils as the recipe connects them; null for a single coil.</param>
public sealed record RecipePhase(IReadOnlyList<CoilSigns> Coils, PhaseAnswer? Together)
{
    /// <summary>True when the coils work against each other: nothing should be wound before the recipe is looked at.</summary>
    public bool IsRed => Together is { InPhase: false };

    /// <summary>
    /// What to look at before winding; none when all is well. A recipe may be out of phase on purpose, so it is said and not refused.
    /// </summary>
    public IReadOnlyList<Problem> Warnings =>
        Together switch
        {
            { InPhase: false } answer =>
            [
                new Problem(
                    "connection",
                    $"the coils are {answer.Words}: the strings' signals work against each other. Do not wind before direction, poles "
                        + $"and connection have been looked at",
                    Signs,
                    "winding × magnet alike on all coils"
                ),
            ],
            { Hum: HumAnswer.Adds } answer =>
            [
                new Problem("connection", $"the coils are {answer.Words}", Signs, "opposite windings, with opposite poles, cancel hum"),
            ],
            _ => [],
        };

    private string Signs =>
        string.Join(
            "; ",
            Coils.Select(coil =>
                $"{coil.Name} {(coil.Winding > 0 ? "counter-clockwise" : "clockwise")}, "
                + $"{coil.Pole switch { PoleTop.North => "north up", PoleTop.South => "south up", _ => "pole not stated" }}"
            )
        );

    /// <summary>The signs of a recipe.</summary>
    public static RecipePhase Of(Recipe recipe)
    {
        CoilSigns[] coils =
        [
            .. recipe.Coils.Select(coil => new CoilSigns(
                coil.Name,
                coil.Winding.Direction,
                SeenFrom.Top,
                HotEnd.Finish,
                PoleOf(recipe, coil),
                Math.Max(1, coil.Winding.Turns)
            )),
        ];
        return new RecipePhase(coils, coils.Length < 2 || recipe.Connection == Connection.Single ? null : PhaseRule.Of(coils));
    }

    /// <summary>
    /// From magnetised poles; else from the bar magnets: a bar along y gives the coil on its north side a north pole, a bar along z its
    /// upper face.
    /// </summary>
    private static PoleTop PoleOf(Recipe recipe, RecipeCoil coil)
    {
        int own = Math.Sign(coil.Poles.Sum(pole => pole.NorthUp * pole.PositionsM.Count));
        if (own != 0 || coil.Poles.Any(pole => pole.NorthUp != 0))
        {
            return Named(own);
        }

        double fromBars = 0;
        foreach (RecipeMagnet magnet in recipe.Magnets)
        {
            double direction = magnet.Magnetised.StartsWith('-') ? -1 : 1;
            double acrossM = coil.Position.Y.Si - magnet.Centre.Y.Si;
            fromBars += magnet.Magnetised.TrimStart('-', '+') switch
            {
                "y" => direction * Math.Sign(acrossM) * (Math.Abs(acrossM) > 1e-6 ? 1 : 0),
                "z" => Math.Abs(acrossM) < Math.Max(magnet.Size.Y.Si, coil.Bobbin.CoreWidth.Si) ? direction : 0,
                _ => 0,
            };
        }

        return Named(Math.Sign(fromBars));
    }

    private static PoleTop Named(int sign) =>
        sign switch
        {
            > 0 => PoleTop.North,
            < 0 => PoleTop.South,
            _ => PoleTop.Unknown,
        };
}
