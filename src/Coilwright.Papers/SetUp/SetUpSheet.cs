using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.SetUp;

/// <summary>The set-up sheet in parts, for the PDF: one sheet a coil, with the words of the sheet on the screen.</summary>
public static class SetUpSheet
{
    /// <summary>A sheet for each coil.</summary>
    public static IReadOnlyList<Sheet> Of(WindingSetUp setUp) =>
        [.. setUp.Coils.Select((coil, at) => Of(setUp, coil, $"{at + 1} of {setUp.Coils.Count}"))];

    private static Sheet Of(WindingSetUp setUp, CoilSetUp coil, string place)
    {
        (string, string)[] batch = setUp.Batch is { } of ? [("Batch", of.Name), ("Coils", of.CoilsWords)] : [];
        SheetHeading heading = setUp.Heading.Revision.Length > 0 ? setUp.Heading : setUp.Heading with { Revision = "not released" };
        return new Sheet(
            $"Set-up, coil {coil.Name}",
            setUp.RecipeName,
            heading,
            [.. Parts(setUp, coil)],
            Shortened(SetUpHead.Code(setUp, coil))
        )
        {
            OwnFacts = [.. batch, ("Coil", place)],
        };
    }

    private static IEnumerable<SheetPart> Parts(WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.IsForNoWinder)
        {
            yield return new TextPart("Note: " + WindingSetUp.ForNoWinderWords);
        }

        (string stop, string turns, string basis) = SetUpHead.Stop(setUp, coil);
        (string meter, string ohms, string limits) = SetUpHead.Meter(setUp, coil);
        yield return new LargePart(stop, turns, basis);
        if (!setUp.OnlyWhatIsSet)
        {
            yield return new FiguresPart([new KeyFigure(meter, ohms, limits)], 1);
        }

        if (setUp.Phase is { IsRed: true } phase)
        {
            yield return new CautionPart($"Stop: {phase.Warnings[0].Message} ({phase.Warnings[0].Understood ?? ""}).");
        }

        int number = 0;
        foreach (SetUpStep step in SetUpSteps.Of(setUp, coil))
        {
            yield return new StepPart(++number, step.Name, Lines(step), step.Caution.Length > 0 ? [step.Caution] : []);
        }

        if (setUp.OnlyWhatIsSet)
        {
            yield break;
        }

        (string broken, IReadOnlyList<string> choices) = SetUpSteps.Break(coil);
        yield return new TextPart("If the wire breaks" + broken);
        foreach (string choice in choices)
        {
            yield return new TextPart("• " + choice);
        }
    }

    private static string[] Lines(SetUpStep step)
    {
        string pairs = string.Join("   ", step.Pairs.Select(Said));
        return [.. pairs.Length > 0 ? [pairs] : Array.Empty<string>(), .. step.Terms.Select(Said)];
    }

    private static string Said((string Term, string Meaning) one) => $"{one.Term}: {one.Meaning}";

    private static string Shortened(string code) => code.Length > 40 ? code[..40] : code;
}
