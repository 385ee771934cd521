using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Polarity;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Cards;

/// <summary>
/// The wiring sheet: which end goes where, what is in phase and what hums in each position of the switch, and the test with iron that
/// proves it.
/// </summary>
/// <remarks>
/// Phase, hum and first swing follow from signs (<see cref="PhaseRule"/>); series joins each finish to the next start, as the model of the
/// recipe does.
/// </remarks>
public static class WiringSheet
{
    private const string Blank = "________________";

    /// <summary>The sheet.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="wiring">Lead colours, switch and side.</param>
    /// <exception cref="ArgumentException">The wiring has problems: <see cref="Wiring.Check(IReadOnlyList{CoilSigns})"/> tells them
    /// all.</exception>
    public static Sheet Of(Recipe recipe, SheetHeading heading, Wiring wiring)
    {
        RecipePhase phase = RecipePhase.Of(recipe);
        if (wiring.Check(phase.Coils) is { Count: > 0 } problems)
        {
            throw new ArgumentException(
                string.Join("; ", problems.Select(problem => $"{problem.Field}: {problem.Message}")),
                nameof(wiring)
            );
        }

        string side = wiring.Side == SeenFrom.Top ? "the top (strings' side)" : "the bottom (away from the strings)";
        List<SheetPart> parts = [new FiguresPart([new KeyFigure("As the recipe joins its coils", Together(phase), Joined(recipe))], 1)];
        parts.AddRange(
            phase.Warnings.Where(_ => phase.IsRed).Select(warning => new CautionPart($"{warning.Message} ({warning.Understood})."))
        );
        parts.Add(new TitlePart("Coils"));
        parts.Add(
            new TablePart(
                ["coil", $"wound, start to finish, seen from {side}", "pole to the strings", "start goes to", "finish goes to"],
                [.. phase.Coils.Select((coil, at) => Coil(recipe, phase, coil, at, wiring.Side))],
                [1, 1.8, 1.1, 1.5, 1.5]
            )
        );
        parts.Add(new TitlePart("Lead colours, as this shop wrote them"));
        parts.Add(
            new TablePart(
                ["coil", "start", "finish"],
                [
                    .. phase.Coils.Select(coil =>
                        (string[])[coil.Name, Colour(wiring, coil.Name, "start"), Colour(wiring, coil.Name, "finish")]
                    ),
                ],
                []
            )
        );
        parts.Add(new TextPart($"Ground (screen, cover, base plate): {(wiring.Ground.Trim() is { Length: > 0 } ground ? ground : Blank)}"));
        parts.AddRange(Twice(wiring));
        parts.Add(new TitlePart("Positions of the switch"));
        parts.Add(
            new TablePart(
                ["position", "sounds", "strings and hum", "hum left"],
                [.. Positions(recipe, phase, wiring)],
                [1.5, 1.8, 1.6, 1.6]
            )
        );
        parts.AddRange(Iron(phase));
        parts.Add(new CautionPart(string.Join(' ', Cautions.For(Job.Wiring))));
        return new Sheet("Wiring sheet", recipe.Name, heading, parts, Sheet.CodeOf(recipe.Name));
    }

    private static string Together(RecipePhase phase)
    {
        string apart = phase.Coils.Count == 1 ? "one coil" : "each coil by itself";
        return phase.Together?.Words ?? apart + ": hum is heard";
    }

    private static string Joined(Recipe recipe) =>
        recipe.Coils.Count == 1
            ? "start to ground, finish to the output"
            : recipe.Connection switch
            {
                Connection.Series => "in series: "
                    + string.Join(" – ", ((string[])["ground", .. recipe.Coils.Select(coil => coil.Name), "output"])),
                Connection.Parallel => "in parallel: starts together to ground, finishes together to the output",
                _ => "not joined",
            };

    private static IReadOnlyList<string> Coil(Recipe recipe, RecipePhase phase, CoilSigns coil, int at, SeenFrom side)
    {
        bool clockwise = coil.Direction == WindingDirection.Clockwise ^ side != coil.Side,
            series = recipe.Connection == Connection.Series;
        string start = series && at > 0 ? "finish of " + phase.Coils[at - 1].Name : "ground",
            finish = series && at < phase.Coils.Count - 1 ? "start of " + phase.Coils[at + 1].Name : "output (hot)";
        bool apart = recipe.Connection == Connection.Single && phase.Coils.Count > 1;
        return
        [
            coil.Name,
            clockwise ? "clockwise" : "counter-clockwise",
            coil.Pole switch
            {
                PoleTop.North => "north",
                PoleTop.South => "south",
                _ => "not stated",
            },
            apart ? "switch" : start,
            apart ? "switch" : finish,
        ];
    }

    private static string Colour(Wiring wiring, string coil, string end) =>
        wiring.Colours.FirstOrDefault(colour => colour.Coil == coil && colour.End == end)?.Colour.Trim() ?? Blank;

    private static IEnumerable<SheetPart> Twice(Wiring wiring) =>
        wiring
            .Colours.GroupBy(colour => colour.Colour.Trim(), StringComparer.OrdinalIgnoreCase)
            .Where(group => group.Count() > 1)
            .Select(group => new TextPart(
                $"{group.Key} stands for {string.Join(" and ", group.Select(colour => $"the {colour.End} of {colour.Coil}"))}: tell "
                    + $"them apart by ohms before soldering."
            ));

    private static IEnumerable<IReadOnlyList<string>> Positions(Recipe recipe, RecipePhase phase, Wiring wiring)
    {
        CoilSigns[] all = [.. phase.Coils, .. wiring.Others];
        foreach (SwitchPosition position in wiring.Positions.Count > 0 ? wiring.Positions : Usual(recipe, phase))
        {
            PhaseAnswer answer = position.Answer(all);
            bool alone = position.Sounding.Count == 1;
            yield return
            [
                position.Name,
                string.Join(", ", position.Sounding.Select(name => position.Exchanged.Contains(name) ? name + " (ends exchanged)" : name)),
                alone ? "one coil" : answer.Words,
                alone ? "all of it: nothing cancels it" : Left(answer.HumLevelDb),
            ];
        }
    }

    /// <summary>The positions of a wiring that names none: all coils as the recipe joins them, or each alone.</summary>
    private static IReadOnlyList<SwitchPosition> Usual(Recipe recipe, RecipePhase phase) =>
        recipe.Connection != Connection.Single && phase.Coils.Count > 1
            ? [new SwitchPosition("as the recipe joins them", [.. phase.Coils.Select(coil => coil.Name)], [])]
            : [.. phase.Coils.Select(coil => new SwitchPosition(coil.Name + " alone", [coil.Name], []))];

    /// <summary>By turns alone; below −60 dB what is left comes from how unlike two real coils are.</summary>
    private static string Left(double levelDb)
    {
        string sign = levelDb < 0 ? "−" : "";
        return levelDb < -60
            ? "below −60 dB by turns; how alike the coils are decides"
            : string.Create(CultureInfo.InvariantCulture, $"{sign}{Math.Abs(levelDb):0} dB by turns, against all adding");
    }

    private static IEnumerable<SheetPart> Iron(RecipePhase phase)
    {
        yield return new TitlePart("Test with iron, on every piece");
        yield return new TextPart(
            "Plus of the meter to the finish, minus to the start, most sensitive direct-voltage range (a needle or an oscilloscope "
                + "shows it best). Bring a piece of iron quickly near a pole and look at the first swing; drawn away "
                + "it swings the other way."
        );
        yield return new TablePart(
            ["coil", "expected first swing, finish as the hot end", "seen", "by"],
            [.. phase.Coils.Select(coil => (string[])[coil.Name, coil.FirstSwingWords, "☐ up   ☐ down", "__________"])],
            [1, 2.6, 1.2, 1]
        );
        if (phase.Coils.Any(coil => coil.FirstSwing == 0))
        {
            yield return new TextPart("Where the pole is not stated, test one piece that is known to be right and write its swing here.");
        }

        yield return new TextPart(
            "Another swing than expected: leads, winding direction or magnet. Stop and find which before the next piece."
        );
    }
}
