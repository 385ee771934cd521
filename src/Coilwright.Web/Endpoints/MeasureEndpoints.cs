using System.Globalization;
using Coilwright.Analysis.Sampling;
using Coilwright.Application.Measuring;
using Coilwright.Web.Forms;
using Coilwright.Web.Pages;
using Coilwright.Web.Views.Measuring;
using Coilwright.Workshop.Entry;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Coilwright.Web.Endpoints;

/// <summary>Measurements asked by an address: resonances with capacitors, and sampling plans.</summary>
internal static class MeasureEndpoints
{
    public static void MapMeasure(this IEndpointRouteBuilder app)
    {
        app.MapGet("/measure", () => Answers.Page<MeasurePage>([]));
        app.MapGet("/measure/resonance", Resonance);
        app.MapGet("/measure/sample", Sample);
    }

    /// <summary>One page of a measurement, with what was typed and what came of it.</summary>
    public static IResult Show<TPage>(FormValues typed, IReadOnlyList<Problem> problems, object? view)
        where TPage : IComponent =>
        Answers.Page<TPage>(
            new()
            {
                ["Typed"] = typed,
                ["Problems"] = problems,
                ["View"] = view,
            },
            Answers.StatusOf(problems)
        );

    private static IResult Resonance(HttpRequest request, SolveResonances solve)
    {
        FormValues typed = Asked(request);
        TypedPeak[] peaks =
        [
            .. Enumerable
                .Range(0, MeasureResonancePage.Rows)
                .Select(row => new TypedPeak(typed[Place(row, "capacitor")], typed[Place(row, "frequency")])),
        ];
        if (request.Query.Count == 0)
        {
            return Show<MeasureResonancePage>(typed, [], null);
        }

        int rows = Array.FindLastIndex(peaks, peak => peak.Capacitor.Trim().Length + peak.Frequency.Trim().Length > 0) + 1;
        ResonanceQuestion asked = new(peaks[..rows])
        {
            Tolerance = typed["tolerance"],
            Resistance = typed["resistance"],
            Inductance = typed["inductance"],
            At = typed["at"],
        };
        ReadOutcome<SolvedResonances> solved = solve.Solve(asked, unitRequired: false);
        return Show<MeasureResonancePage>(typed, solved.Problems, solved.Value is { } value ? new ResonanceView(value) : null);
    }

    private static IResult Sample(HttpRequest request, PlanSampling plan)
    {
        FormValues typed = Asked(request);
        if (request.Query.Count == 0)
        {
            return Show<MeasureSamplePage>(typed, [], null);
        }

        if (!CountParser.TryParse(typed["lot"], 2, SamplingQuestion.MostPieces, out int lot, out string why))
        {
            return Show<MeasureSamplePage>(typed, [new Problem("lot", why, null, CountParser.Range(2, SamplingQuestion.MostPieces))], null);
        }

        ReadOutcome<SamplingAnswer> answer = plan.Plan(
            new SamplingQuestion(
                lot,
                CountParser.TryNumber(typed["aql"], out double percent) ? percent : 0,
                typed["level"],
                Enum.TryParse(typed["inspection"], ignoreCase: true, out Inspection how) && Enum.IsDefined(how) ? how : Inspection.Normal,
                typed["measured"] == "yes"
            )
        );
        return Show<MeasureSamplePage>(typed, answer.Problems, answer.Value is { } value ? new SampleView(value) : null);
    }

    private static string Place(int row, string name) => string.Create(CultureInfo.InvariantCulture, $"peaks[{row}].{name}");

    private static FormValues Asked(HttpRequest request) =>
        FormValues.Of([.. request.Query.Select(one => (one.Key, one.Value.ToString()))]);
}
