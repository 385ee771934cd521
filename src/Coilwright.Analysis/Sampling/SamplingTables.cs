using System.Globalization;

namespace Coilwright.Analysis.Sampling;

/// <summary>The tabulated plans: how many pieces of a lot to look at, and when to accept it.</summary>
/// <remarks>
/// Attributes: MIL-STD-105E; variables: MIL-STD-414, level II. Both as read in an open statistics package, named in the table files.
/// </remarks>
public static class SamplingTables
{
    private static readonly (string[] Heading, string[][] Rows) s_attribute = Read("attribute"),
        s_classes = Read("classes"),
        s_variables = Read("variables");

    /// <summary>Acceptable quality levels of the attribute tables, % defective.</summary>
    public static IReadOnlyList<double> AttributeLevels { get; } = [.. s_attribute.Heading.Skip(2).Select(Number)];

    /// <summary>Acceptable quality levels of the variables tables, % defective.</summary>
    public static IReadOnlyList<double> VariablesLevels { get; } = [.. s_variables.Heading.Skip(2).Select(Number)];

    /// <summary>Inspection levels.</summary>
    public static IReadOnlyList<string> InspectionLevels { get; } = [.. s_classes.Heading.Skip(1)];

    /// <summary>The single plan for a lot; a sample as large as the lot means that every piece is looked at.</summary>
    /// <param name="lot">Pieces in the lot, 2 or more.</param>
    /// <param name="level">One of <see cref="InspectionLevels"/>.</param>
    /// <param name="aqlPercent">One of <see cref="AttributeLevels"/>.</param>
    /// <param name="inspection">How sharply.</param>
    /// <exception cref="ArgumentException">The level or quality level is not in the tables.</exception>
    public static AttributePlan Attribute(int lot, string level, double aqlPercent, Inspection inspection)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lot, 2);
        int at = Array.IndexOf(s_classes.Heading, level);
        if (at < 1)
        {
            throw new ArgumentException("There is no such inspection level.", nameof(level));
        }

        string sizeClass = s_classes.Rows.First(row => lot <= int.Parse(row[0], CultureInfo.InvariantCulture))[at];
        string[] found = s_attribute.Rows.First(row => row[0] == Name(inspection) && row[1] == sizeClass);
        double[] cell = Cell(found[2 + Place(AttributeLevels, aqlPercent)]);
        return new AttributePlan([new SampleStage((int)cell[0], (int)cell[1], (int)cell[2])]);
    }

    /// <summary>The plan by variables for a lot, level II, spread unknown.</summary>
    /// <param name="lot">Pieces in the lot, 2 or more.</param>
    /// <param name="aqlPercent">One of <see cref="VariablesLevels"/>.</param>
    /// <param name="inspection">How sharply.</param>
    /// <exception cref="ArgumentException">The quality level is not in the table.</exception>
    public static TabulatedVariablesPlan Variables(int lot, double aqlPercent, Inspection inspection)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(lot, 2);
        string[] found = s_variables.Rows.First(row =>
            row[0] == Name(inspection) && lot <= int.Parse(row[1], CultureInfo.InvariantCulture)
        );
        double[] cell = Cell(found[2 + Place(VariablesLevels, aqlPercent)]);
        return new TabulatedVariablesPlan((int)cell[0], cell[1], cell[2]);
    }

    private static string Name(Inspection inspection) =>
        inspection switch
        {
            Inspection.Tightened => "tightened",
            Inspection.Reduced => "reduced",
            _ => "normal",
        };

    private static int Place(IReadOnlyList<double> levels, double aqlPercent)
    {
        for (int at = 0; at < levels.Count; at++)
        {
            if (Math.Abs(levels[at] - aqlPercent) < 1e-9)
            {
                return at;
            }
        }

        throw new ArgumentException("There is no such quality level in the tables.", nameof(aqlPercent));
    }

    private static double[] Cell(string cell) => [.. cell.Split('/').Select(Number)];

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static (string[] Heading, string[][] Rows) Read(string name) => AnalysisTables.Read("Sampling.Tables." + name);
}
