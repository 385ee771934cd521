using System.Globalization;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Readings;

/// <summary>Where limits come from that are kept with a batch.</summary>
/// <param name="RevisionNumber">The revision of the recipe.</param>
/// <param name="Program">Version of the program that worked them out.</param>
/// <param name="Calibration">Number of the shop's corrections that the forecast took in; 0 for none.</param>
/// <param name="AtBegin">True when they were written as the batch began.</param>
/// <param name="TimeUtc">When they were worked out.</param>
public sealed record LimitsOrigin(int RevisionNumber, string Program, int Calibration, bool AtBegin, DateTimeOffset TimeUtc)
{
    /// <summary>In words, for pages and papers.</summary>
    public string Words
    {
        get
        {
            string when = AtBegin
                ? "kept since the batch began"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"worked out on {TimeUtc:yyyy-MM-dd}, since the batch was begun before limits were kept"
                );
            return $"limits of revision {RevisionRecord.LetterOf(RevisionNumber)}, {when} (version {Program})";
        }
    }
}
