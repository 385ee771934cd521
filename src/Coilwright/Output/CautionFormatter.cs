namespace Coilwright.Output;

/// <summary>Cautions for people at a terminal.</summary>
public static class CautionFormatter
{
    /// <summary>What was said, with the cautions of the work and the closing line below it; alone where there is none.</summary>
    public static string Below(string said, IReadOnlyList<string> cautions) =>
        cautions.Count == 0 ? said : string.Join(Environment.NewLine, (string[])[said, .. Lines(cautions)]);

    /// <summary>One line for each caution, and the closing line; nothing where there is none.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<string> cautions) =>
        cautions.Count == 0
            ? []
            :
            [
                .. cautions.Select(caution => "  CAUTION  " + caution),
                "  Cautions are common practice. " + Workshop.SetUp.Cautions.ClosingLine,
            ];
}
