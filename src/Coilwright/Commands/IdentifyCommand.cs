using System.CommandLine;
using System.Globalization;
using Coilwright.Analysis.Originals;
using Coilwright.Application.Curves;
using Coilwright.Formats.Originals;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Originals;

namespace Coilwright.Commands;

/// <summary>coilwright identify READINGS: what an original was made of, with probabilities, and the best next reading.</summary>
public static class IdentifyCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> readings = new("READINGS")
        {
            Description = "An original's readings (coilwright.original/1); - reads standard input",
        };
        Option<bool> json = new("--json") { Description = "Write coilwright.explanations/1" };
        Command command = new("identify", "What an original was made of, with probabilities, and the best next reading") { readings, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(readings);
                Original original = OriginalReader.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
                OriginalAnswer answer = await Progress
                    .ShowAsync(desk, "Weighing wires", () => desk.Use<IdentifyOriginal>().Identify(original, cancel), cancel)
                    .ConfigureAwait(false);
                if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(OriginalJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    Write(desk.Output, original.Name, answer);
                }

                return answer.Stopped ? ExitCode.Stopped : ExitCode.Done;
            }
        );
        return command;
    }

    private static void Write(TextWriter writer, string name, OriginalAnswer answer)
    {
        writer.WriteLine(name);
        Table table = new("wire", "film", "probability", "turns", "95 % interval", "bare diameter");
        foreach (OriginalExplanation one in answer.Explanations.TakeWhile((one, i) => i < 3 || one.Probability > 0.005))
        {
            table.Add(
                one.Gauge,
                one.Build,
                one.Probability.ToString("P1", CultureInfo.InvariantCulture),
                Count(one.Turns.Value),
                $"{Count(one.Turns.Low)} – {Count(one.Turns.High)}",
                FigureFormatter.Value(one.BareDiameterM.Value, "m", 4)
            );
        }

        table.Write(writer);
        foreach (
            (string material, double share) in answer
                .ByPoleMaterial.OrderByDescending(share => share.Value)
                .Where(share => share.Value > 0.01)
        )
        {
            writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Poles of {material}: {share:P0}"));
        }

        foreach (NextReading next in answer.NextReadings.Where(next => next.InformationBits > 0.01).Take(3))
        {
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Next, read {OriginalJson.NameOf(next.Quantity)} to ±{next.Relative:P1}: {next.InformationBits:F2} bits"
                )
            );
        }

        foreach (
            string warning in answer.Warnings.Concat(answer.Converged ? [] : ["a search did not come to rest: take the numbers as rough"])
        )
        {
            writer.WriteLine("Note: " + warning);
        }
    }

    private static string Count(double turns) => turns.ToString("#,##0", CultureInfo.InvariantCulture);
}
