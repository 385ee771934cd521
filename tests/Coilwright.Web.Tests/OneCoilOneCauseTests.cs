using System.Net.Http.Json;
using System.Text.Json;
using Coilwright.Workshop;
using Coilwright.Workshop.Batches;
using Coilwright.Workshop.Readings;

namespace Coilwright.Web.Tests;

/// <summary>
/// What is said of a coil's cause is the same in the answer at entry, on the entry page and on the coil's page, whether it passes or not.
/// </summary>
public sealed class OneCoilOneCauseTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_answer_at_entry_and_both_pages_say_the_same_of_each_coil()
    {
        await using PagesOfShop shop = await PagesOfShop.StartAsync();
        string json = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "recipes", "harbour-bridge.json"), Cancel);
        BatchRecord batch = await shop.PlantedAsync(await shop.ReleasedAsync(json), "H-1", "main");
        (string Ohm, string Henry)[] coils =
        [
            ("6.18 k", "2.53 H"),
            ("6.19 k", "2.535 H"),
            ("5.98 k", "2.37 H"), // passes, with fewer turns than its batch
            ("3.09 k", "0.63 H"), // half the turns
        ];
        List<(VerdictKind Kind, string Cause)> said = [];
        for (int at = 0; at < coils.Length; at++)
        {
            string tag = FormattableString.Invariant($"C-{at + 1:000}");
            using HttpResponseMessage answer = await shop.Client.PostAsJsonAsync(
                new Uri($"/api/batches/{batch.Id}/coils", UriKind.Relative),
                new
                {
                    id = Guid.NewGuid(),
                    tag,
                    resistance = coils[at].Ohm,
                    temperature = "20 °C",
                    inductance = coils[at].Henry,
                    inductanceAt = "1 kHz",
                },
                Cancel
            );
            using JsonDocument told = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Cancel));
            Assert.Equal("[]", told.RootElement.GetProperty("problems").GetRawText());
            JsonElement verdict = told.RootElement.GetProperty("verdict");
            string cause = verdict.GetProperty("cause").GetString()!,
                check = verdict.GetProperty("check").GetString()!;

            BatchStatus status = (await shop.Services.Winding.StatusAsync(batch.Id, Cancel))!;
            CoilDossier coil = status.Coils.Single(one => one.Tag == tag);
            string page = await shop.Client.GetStringAsync(new Uri($"/batches/{batch.Id}/coils/{tag}", UriKind.Relative), Cancel);
            string entry = await shop.Client.GetStringAsync(new Uri($"/batches/{batch.Id}/enter", UriKind.Relative), Cancel);
            foreach (string words in new[] { cause, check }.Where(words => words.Length > 0))
            {
                string escaped = System.Net.WebUtility.HtmlEncode(words).Replace("&#39;", "&#x27;", StringComparison.Ordinal);
                Assert.Contains(escaped, page, StringComparison.Ordinal);
                Assert.Contains(escaped, entry, StringComparison.Ordinal);
            }

            Assert.Equal((VerdictAdvice.Cause(coil.Verdict), VerdictAdvice.Check(coil.Verdict)), (cause, check));
            said.Add((coil.Verdict.Kind, cause));
        }

        Assert.All(said[..2], good => Assert.Equal((VerdictKind.Pass, ""), good));
        Assert.Equal(VerdictKind.Pass, said[2].Kind);
        Assert.Contains("turn", said[2].Cause, StringComparison.Ordinal);
        Assert.Contains("about half the turns", said[3].Cause, StringComparison.Ordinal);
    }
}
