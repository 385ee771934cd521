using System.CommandLine;
using Coilwright.Analysis.Quantities;
using Coilwright.Input;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Commands;

/// <summary>The options of <c>read</c> that correct a coil instead of recording one.</summary>
internal sealed class ReadCorrection
{
    private readonly Option<bool> _correct = new("--correct")
    {
        Description = "Corrects the coil's reading; what is not named stays as it is",
    };
    private readonly Option<string> _reason = new("--reason")
    {
        Description = "With --correct: why, in a few words",
        DefaultValueFactory = _ => "",
    };
    private readonly Option<string> _wrong = new("--wrong")
    {
        Description = "With --correct: the wrong reading as it was typed, where several are in force",
        DefaultValueFactory = _ => "",
    };
    private readonly Option<string> _newTag = new("--new-tag")
    {
        Description = "With --correct: the tag it should have had",
        DefaultValueFactory = _ => "",
    };

    public void AddTo(Command command)
    {
        foreach (Option option in (Option[])[_correct, _reason, _wrong, _newTag])
        {
            command.Add(option);
        }
    }

    public bool IsAsked(ParseResult parsed) => parsed.GetValue(_correct);

    /// <summary>The correction of one coil.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="standing">The batch.</param>
    /// <param name="typed">The coil's tag, and what it should read; what is empty stays as it is.</param>
    public CoilCorrection Read(ParseResult parsed, BatchStatus standing, CoilEntry typed)
    {
        string tag = BatchTags.Tidy(standing.Batch, typed.Tag);
        CoilDossier coil = standing.Coils.FirstOrDefault(coil => coil.Tag == tag)
            ?? throw WrongInputException.About("--tag", $"{tag} has no reading to correct");
        ReadingAsWritten ohms = ReadingAsWritten.Of(One(coil, QuantityKey.DcResistance, parsed.GetRequiredValue(_wrong)));
        List<ReadingAsWritten> readings =
        [
            ohms with
            {
                Value = typed.Resistance,
                Temperature = Or(typed.Temperature, ohms.Temperature),
                Turns = Or(typed.Turns, ohms.Turns),
            },
        ];
        if (typed.Inductance.Length + typed.InductanceAt.Length > 0)
        {
            ReadingAsWritten henries = ReadingAsWritten.Of(One(coil, "inductance", ""));
            readings.Add(henries with { Value = Or(typed.Inductance, henries.Value), At = Or(typed.InductanceAt, henries.At) });
        }

        return new CoilCorrection
        {
            Id = typed.Id,
            BatchId = typed.BatchId,
            Tag = tag,
            NewTag = parsed.GetRequiredValue(_newTag),
            Readings = readings,
            Reason = parsed.GetRequiredValue(_reason),
            Person = typed.Person,
        };
    }

    private static ReadingRecord One(CoilDossier coil, string quantity, string wrong)
    {
        ReadingRecord[] all = [.. coil.InForce.Where(reading => reading.Quantity == quantity)];
        ReadingRecord[] meant = [.. all.Where(reading => wrong.Length == 0 || reading.Typed.Trim() == wrong.Trim())];
        string name = quantity == "inductance" ? "inductance" : "resistance",
            there = string.Join(", ", all.Select(reading => reading.Typed));
        if (meant.Length == 1)
        {
            return meant[0];
        }

        throw WrongInputException.About(
            quantity == "inductance" ? "--inductance" : "--wrong",
            all.Length == 0 ? $"{coil.Tag} has no {name} in force" : $"say which {name} of {coil.Tag} is the wrong one",
            there.Length > 0 ? there : null
        );
    }

    private static string Or(string typed, string stands) => typed.Trim().Length > 0 ? typed : stands;
}
