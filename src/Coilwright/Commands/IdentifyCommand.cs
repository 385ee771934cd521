using System.CommandLine;
using Coilwright.Analysis.Originals;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Originals;

namespace Coilwright.Commands;

/// <summary>coilwright identify READINGS: what an original was made of. Exit 1 when no wire explains its readings.</summary>
public static class IdentifyCommand
{
    public static Command Build(Desk desk)
    {
        Argument<string> readings = new("READINGS") { Description = "What is known and read of an original (coilwright.original/1); - reads standard input" };
        Option<bool> metric = new("--metric") { Description = "Look among metric wire sizes instead of AWG" }, json = new("--json") { Description = "Write coilwright.explanations/1" };
        Command command = new("identify", "What an original was made of, with probabilities, and the best next reading") { readings, metric, json };
        command.SetAction(async (parsed, cancel) =>
        {
            string path = parsed.GetRequiredValue(readings);
            Original original = OriginalReader.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
            OriginalAnswer answer = await Progress.ShowAsync(desk, "Weighing the wires", () => Identification.Of(original, parsed.GetValue(metric), cancel), cancel).ConfigureAwait(false);
            if (parsed.GetValue(json))
            {
                await desk.Output.WriteLineAsync(ExplanationsJson.Write(answer)).ConfigureAwait(false);
            }
            else
            {
                PlainExplanations.Write(desk.Output, original.Name, answer);
            }

            return answer.Explanations.Any(explanation => explanation.Probability > 0) ? ExitCode.Done : ExitCode.AnswerIsNo;
        });
        return command;
    }
}
