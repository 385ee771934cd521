using System.Globalization;
using Coilwright.Analysis.Listening;
using Coilwright.Application.Listening;

namespace Coilwright.Web.Views.Listening;

/// <summary>A blind test as its page shows it; nothing of it tells what X is.</summary>
/// <param name="Test">The test.</param>
public sealed record BlindView(BlindTest Test)
{
    private const string Heard =
        "It says that the two can be told apart here, by you, in this sound; not which is better. One test in twenty at most comes out so "
        + "by guessing: if it matters, run it once more.";

    /// <summary>Number of the round under way, from 1.</summary>
    public int Round { get; } = Test.Round;

    /// <summary>What it says; null while it runs.</summary>
    public BlindVerdict? Verdict { get; } = Test.Verdict;

    /// <summary>A, B, and X of this round.</summary>
    public IReadOnlyList<ListenVoice> Voices =>
        [
            .. Test.Heard.Designs.Select(
                (design, place) =>
                    new ListenVoice(
                        ListenView.LetterOf(place),
                        design.Name,
                        $"/listen/blind/{ListenView.LetterOf(place).ToLowerInvariant()}.wav?test={Test.Id}",
                        ""
                    )
            ),
            new ListenVoice(
                "X",
                "one of the two",
                string.Create(CultureInfo.InvariantCulture, $"/listen/blind/x.wav?test={Test.Id}&round={Round}"),
                ""
            ),
        ];

    /// <summary>The designs, A before B.</summary>
    public string Names =>
        string.Join(
            ", ",
            Test.Heard.Designs.Select((design, place) => $"{ListenView.LetterOf(place)} is {design.Name}, load {design.LoadName}")
        );

    /// <summary>How often guessing does as well.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Guessing(BlindVerdict verdict) =>
        $"Somebody who only guesses has {verdict.Hits} or more of {verdict.Rounds} right in "
        + $"{Percent(verdict.GuessProbability)} of such tests.";

    /// <summary>What the verdict means, and what it does not.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="matched">True where both had one level.</param>
    public static string Meaning(BlindVerdict verdict, bool matched) => verdict.IsHeard ? Loudness(matched) + Heard : NotShown(verdict);

    /// <summary>A part as a percentage, with two digits.</summary>
    public static string Percent(double part)
    {
        double percent = 100 * part;
        string digits = percent switch
        {
            >= 10 => "0",
            >= 1 => "0.0",
            >= 0.01 => "0.00",
            _ => "0.0000",
        };
        return percent.ToString(digits, CultureInfo.InvariantCulture) + " %";
    }

    private static string Loudness(bool matched) => matched ? "" : "The levels were not matched: what you heard may be loudness alone. ";

    private static string NotShown(BlindVerdict verdict) =>
        $"That does not show that there is none. A test of {verdict.Rounds} rounds finds somebody who is right in three rounds of "
        + $"four in {Percent(BlindVerdict.FindsThreeInFour(verdict.Rounds))} of cases; who hears less is found less often.";
}
