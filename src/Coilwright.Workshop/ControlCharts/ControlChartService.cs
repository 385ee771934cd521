using System.Collections.Concurrent;
using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Batches.Summaries;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>
/// The wall of charts: which coils are drawn, from where their limits are taken, and what the charts say. Safe for several callers at once.
/// </summary>
public sealed class ControlChartService(IShopRecords records, MachineService machines, BatchDossiers dossiers)
{
    private readonly ConcurrentDictionary<(Guid Recipe, int Number, string Coil, string Quantity), Band?> _bands = new();

    /// <summary>The wall as chosen.</summary>
    public async Task<ChartResult> ShowAsync(ChartSettingsForm form, CancellationToken cancel)
    {
        List<Problem> problems = [];
        ChartResult choices = await ChoicesAsync(form, problems, cancel).ConfigureAwait(false);
        string ofBatch = choices.Batch is null ? "" : choices.Batches.First(batch => batch.Id == choices.Batch).Machine;
        string winder = form.Machine.Trim().Length > 0 ? form.Machine : ofBatch;
        Machine? machine = winder.Length > 0 ? await machines.FindAsync(winder, cancel).ConfigureAwait(false) : null;
        ChartLimits? kept = await KeptAsync(form, choices, cancel).ConfigureAwait(false);
        ChartSettingsReader read = new(
            kept is null ? form : form with { From = kept.Coils?.ToString(CultureInfo.InvariantCulture) ?? form.From },
            machine?.Spindles ?? 1
        );
        problems.AddRange(read.Problems);
        choices = choices with { Problems = problems, Last = read.Coils, Kept = kept };
        BatchRecord[] drawn = [.. choices.Batches.Where(batch => choices.Batch is null || batch.Id == choices.Batch)];
        choices = choices with { Unreadable = await UnreadableAsync(drawn, cancel).ConfigureAwait(false) };
        return problems.Count > 0 || drawn.Length == 0 ? choices : await DrawAsync(choices, read, drawn, cancel).ConfigureAwait(false);
    }

    private async Task<ChartResult> ChoicesAsync(ChartSettingsForm form, List<Problem> problems, CancellationToken cancel)
    {
        BatchRecord[] batches = [.. (await records.Batches.AllAsync(cancel).ConfigureAwait(false)).Reverse()];
        IReadOnlyList<RevisionRecord> revisions = await records.Recipes.NewestAsync(cancel).ConfigureAwait(false);
        BatchRecord? one = Chosen("batch", form.Batch, batches, batch => batch.Id, problems);
        BatchRecord? ofRecipe = one
            ?? Chosen("recipe", form.Recipe, batches, batch => batch.RecipeId, problems)
            ?? (batches.Length > 0 ? batches[0] : null);
        BatchRecord[] ofIt = [.. batches.Where(batch => batch.RecipeId == ofRecipe?.RecipeId)];
        string[] coils = [.. ofIt.Select(batch => batch.CoilName).Distinct(StringComparer.Ordinal)];
        string coil = one?.CoilName ?? (form.Coil.Trim().Length == 0 ? coils.FirstOrDefault("") : form.Coil.Trim());
        if (coil.Length > 0 && !coils.Contains(coil))
        {
            problems.Add(new Problem("coil", "no batch of this recipe winds such a coil", coil, string.Join(", ", coils)));
        }

        return new ChartResult(form, problems, null)
        {
            Recipes =
            [
                .. batches
                    .Select(batch => batch.RecipeId)
                    .Distinct()
                    .Select(id => (id, revisions.FirstOrDefault(revision => revision.RecipeId == id)?.RecipeName ?? "a recipe")),
            ],
            Recipe = ofRecipe?.RecipeId,
            Coils = coils,
            Coil = coil,
            Batches = [.. ofIt.Where(batch => batch.CoilName == coil)],
            Batch = one?.Id,
            Machines = [.. (await machines.ListAsync(cancel).ConfigureAwait(false)).Select(machine => machine.Name)],
            Spools = [.. (await records.Stock.SpoolsAsync(cancel).ConfigureAwait(false)).Select(spool => spool.Label)],
        };
    }

    private static BatchRecord? Chosen(
        string field,
        string typed,
        BatchRecord[] batches,
        Func<BatchRecord, Guid> idOf,
        List<Problem> problems
    )
    {
        if (typed.Trim().Length == 0)
        {
            return null;
        }

        BatchRecord? found = Guid.TryParse(typed, out Guid id) ? batches.FirstOrDefault(batch => idOf(batch) == id) : null;
        if (found is null)
        {
            problems.Add(new Problem(field, field == "batch" ? "there is no such batch" : "no batch was begun on such a recipe", typed));
        }

        return found;
    }

    private async Task<ChartResult> DrawAsync(ChartResult choices, ChartSettingsReader read, BatchRecord[] drawn, CancellationToken cancel)
    {
        ChartSettingsForm form = choices.Form;
        bool bySource = form.Machine.Trim().Length + form.Spool.Trim().Length > 0;
        IReadOnlyDictionary<Guid, BatchDossier>? sources = bySource ? await dossiers.OfAsync(drawn, cancel).ConfigureAwait(false) : null;
        ChartQuery query = new()
        {
            Batches = [.. drawn.Select(batch => batch.Id)],
            Quantity = read.Question.Quantity,
            Coils = read.Coils,
            Wanted = reading =>
                Same(form.Person, reading.Person) && (sources is null || IsFrom(form, sources[reading.BatchId].OriginOf(reading.Tag))),
        };
        IReadOnlyList<ChartReading> last = await records.Readings.ForChartAsync(query, cancel).ConfigureAwait(false);
        if (last.Count == 0)
        {
            return choices;
        }

        BatchRecord newest = drawn.First(batch => batch.Id == last[^1].BatchId);
        Band? band = await BandAsync(newest, read.Question.Quantity, cancel).ConfigureAwait(false);
        Drawing drawing = new(query.Quantity, band, last[^1].AtHz, drawn, await VerdictsAsync(drawn, last, cancel).ConfigureAwait(false));
        (IReadOnlyList<double>? taken, string words, Problem? problem) = await LimitsAsync(choices, read, query, drawing, drawn, cancel)
            .ConfigureAwait(false);
        if (problem is not null)
        {
            return choices with { Problems = [problem] };
        }

        ChartedCoil[] points = drawing.Points(last);
        return choices with
        {
            ControlChart = ControlChartBuilder.Build(read.Question, points, band, taken),
            LimitsWords = words,
            OtherFrequency = last.Count - points.Length,
        };
    }

    private async Task<(IReadOnlyList<double>? Values, string Words, Problem? Problem)> LimitsAsync(
        ChartResult choices,
        ChartSettingsReader read,
        ChartQuery query,
        Drawing drawing,
        BatchRecord[] drawn,
        CancellationToken cancel
    )
    {
        (ChartSettingsForm form, ChartLimits? kept, BatchRecord[] ofCoil) = (choices.Form, choices.Kept, [.. choices.Batches]);
        if (!read.Question.Frozen)
        {
            return (null, "running: from all coils drawn, and they move with each coil", null);
        }

        string code = kept?.Since.Trim() ?? form.Since.Trim(),
            why = kept?.Because ?? form.Why.Trim();
        long from = 0;
        if (code.Length > 0)
        {
            if (
                Begins(kept is null ? drawn : ofCoil, code) is not { } found
                || (
                    await records
                        .Readings.ForChartAsync(
                            query with
                            {
                                Batches = [found.Batch.Id],
                                Coils = 1,
                                First = true,
                                Wanted = reading => reading.Tag == found.Tag,
                            },
                            cancel
                        )
                        .ConfigureAwait(false)
                )
                    is not [{ } begin]
            )
            {
                return (
                    null,
                    "",
                    new Problem(
                        kept is null ? "since" : "chartLimits",
                        kept is null ? "there is no such coil among these" : "the shop's rules keep limits from a coil that is not there",
                        code,
                        "a tag, or batch/tag, that has a reading"
                    )
                );
            }

            from = begin.Order;
        }

        const int Spare = 2; // some of the first coils may have been rejected
        IReadOnlyList<ChartReading> first = await records
            .Readings.ForChartAsync(query with { First = true, FromOrder = from, Coils = Spare * read.Question.LimitsFrom }, cancel)
            .ConfigureAwait(false);
        Drawing ofFirst = drawing.With(await VerdictsAsync(choices.Batches, first, cancel).ConfigureAwait(false));
        double[] values = [.. ofFirst.Points(first).Where(point => !point.LeftOut).Select(point => point.Value)];
        int count = Math.Min(values.Length, read.Question.LimitsFrom);
        string keptWords = kept is null ? "" : " (kept for the shop)";
        return (
            values,
            code.Length > 0
                ? $"frozen: taken anew from the {count} coils from {code} on, because: {why}{keptWords}"
                : $"frozen: from the first {count} coils of all that were chosen; later coils do not move them",
            null
        );
    }

    /// <summary>Limits that the shop keeps for the chart that is asked for; null when others were asked for, or none are kept.</summary>
    private async Task<ChartLimits?> KeptAsync(ChartSettingsForm form, ChartResult choices, CancellationToken cancel)
    {
        bool own = form.Since.Trim().Length > 0 || form.Limits.Trim().Length > 0;
        string recipe = choices.Recipes.FirstOrDefault(one => one.Id == choices.Recipe).Name ?? "",
            quantity = form.Quantity.Trim().Length > 0 ? form.Quantity.Trim() : ChartSettings.Quantities[0];
        return own
            ? null
            : (await RuleService.CurrentAsync(records.Rules, cancel).ConfigureAwait(false)).ChartLimits.LastOrDefault(one =>
                one.AreOf(recipe, choices.Coil, quantity)
            );
    }

    private static (BatchRecord Batch, string Tag)? Begins(BatchRecord[] drawn, string code)
    {
        foreach (BatchRecord batch in drawn)
        {
            bool named = code.StartsWith(batch.Name + "/", StringComparison.OrdinalIgnoreCase);
            string tag = BatchTags.Tidy(batch, code);
            if (
                (named || !code.Contains('/', StringComparison.Ordinal))
                && BatchTags.NumberOf(batch, tag) is { } number
                && number <= batch.Quantity
            )
            {
                return (batch, tag);
            }
        }

        return null;
    }

    private async Task<Band?> BandAsync(BatchRecord batch, string quantity, CancellationToken cancel)
    {
        if (quantity is QuantityKey.DcResistance or QuantityKey.Inductance)
        {
            VerdictLimits? limits = (await dossiers.LimitsOfAsync(batch, cancel).ConfigureAwait(false)).Value;
            Band? band = quantity == QuantityKey.DcResistance ? limits?.Resistance : limits?.Inductance;
            return band is { IsTarget: true } ? band : null;
        }

        (Guid, int, string, string) key = (batch.RecipeId, batch.RevisionNumber, batch.CoilName, quantity);
        if (_bands.TryGetValue(key, out Band? known))
        {
            return known;
        }

        RevisionRecord? revision = await records
            .Recipes.FindRevisionAsync(batch.RecipeId, batch.RevisionNumber, cancel)
            .ConfigureAwait(false);
        Recipe? recipe = revision is null ? null : RecipeReader.Read(revision.Json).Value;
        int index = recipe?.Coils.ToList().FindIndex(coil => coil.Name == batch.CoilName) ?? -1;
        return _bands[key] =
            recipe is null || index < 0
                ? null
                : (
                    await RecordStatus
                        .ReadAsync("Batch " + batch.Name, () =>
                            Task.FromResult<Targets>(new(VerdictLimits.TargetOf(recipe, index, quantity)))
                        )
                        .ConfigureAwait(false)
                )
                    .Value
                    ?.Band;
    }

    private sealed record Targets(Band? Band);

    private async Task<IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, Verdict>>> VerdictsAsync(
        IEnumerable<BatchRecord> batches,
        IReadOnlyList<ChartReading> readings,
        CancellationToken cancel
    )
    {
        HashSet<Guid> drawn = [.. readings.Select(reading => reading.BatchId)];
        IReadOnlyDictionary<Guid, BatchDossier> judged = await dossiers
            .OfAsync(batches.Where(batch => drawn.Contains(batch.Id)), cancel)
            .ConfigureAwait(false);
        return judged.ToDictionary(one => one.Key, one => one.Value.Weighed);
    }

    /// <summary>Those of some batches that cannot be shown; one that has a summary of how it stands can.</summary>
    private async Task<IReadOnlyList<UnreadableRecord>> UnreadableAsync(IEnumerable<BatchRecord> batches, CancellationToken cancel)
    {
        HashSet<Guid> doubtful =
        [
            .. (await records.Summaries.UnreadableAsync(cancel).ConfigureAwait(false)).Select(batch => batch.Id),
            .. (await records.Summaries.MissingAsync(BatchSummaries.AtOnce, cancel).ConfigureAwait(false)).Select(batch => batch.Id),
        ];
        List<RecordStatus<VerdictLimits>> read = [];
        foreach (BatchRecord batch in batches.Where(batch => doubtful.Contains(batch.Id)))
        {
            read.Add(await dossiers.LimitsOfAsync(batch, cancel).ConfigureAwait(false));
        }

        return read.Unreadable();
    }

    private static bool IsFrom(ChartSettingsForm form, CoilOrigin coil) => Same(form.Machine, coil.Machine) && Same(form.Spool, coil.Spool);

    private static bool Same(string wanted, string found) =>
        wanted.Trim().Length == 0 || string.Equals(wanted.Trim(), found, StringComparison.OrdinalIgnoreCase);

    /// <summary>How a reading becomes a point.</summary>
    private sealed class Drawing(
        string quantity,
        Band? band,
        double? hz,
        BatchRecord[] batches,
        IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, Verdict>> verdicts
    )
    {
        private readonly Dictionary<Guid, string> _names = batches.ToDictionary(batch => batch.Id, batch => batch.Name);
        private readonly double? _hz = band?.AtHz ?? hz;
        private readonly bool _isAt20C = Quantity.Find(quantity) is { IsComparedAt20C: true };

        public ChartedCoil[] Points(IReadOnlyList<ChartReading> readings) => [.. readings.Where(SameFrequency).Select(PointOf)];

        private bool SameFrequency(ChartReading reading) =>
            _isAt20C || reading.AtHz is not { } at || _hz is not { } wanted || Math.Abs(at - wanted) <= 0.02 * wanted;

        /// <summary>The same for coils whose verdicts are these.</summary>
        public Drawing With(IReadOnlyDictionary<Guid, IReadOnlyDictionary<string, Verdict>> others) =>
            new(quantity, band, hz, batches, others);

        private ChartedCoil PointOf(ChartReading reading)
        {
            double value = Quantity.Comparable(quantity, reading.Si, reading.TemperatureC);
            Verdict? verdict = verdicts.GetValueOrDefault(reading.BatchId)?.GetValueOrDefault(reading.Tag);
            return new ChartedCoil(reading.Tag, value, _names[reading.BatchId], reading.Person, reading.TimeUtc)
            {
                TemperatureKnown = !_isAt20C || reading.TemperatureC is not null,
                LeftOut = verdict is null || !BatchChart.Counts(verdict, quantity),
            };
        }
    }
}
