using System.Text.RegularExpressions;
using Coilwright.Storage.Tests;

namespace Coilwright.Tests.Commands;

/// <summary>A shop that an older version wrote answers, once it was brought up to date, as that version answered.</summary>
public sealed partial class OldShopAnswersTests
{
    public static TheoryData<int> Versions => [.. OldShop.WithPieces];

    [Theory]
    [MemberData(nameof(Versions))]
    public async Task An_older_shop_gives_the_answers_that_it_gave_before(int version)
    {
        using TestFolder folder = new();
        string shop = folder.PathOf("shop.db");
        await OldShop.WriteAsync(version, shop, TestContext.Current.CancellationToken);
        Assert.Equal(18, OldShop.Answers.Count);
        foreach ((string question, string answer) in OldShop.Answers)
        {
            CommandRun run = await CommandRun.Of([.. Words(question), "--shop", shop]);
            string now = AddedSince().Replace(run.Output + run.Error, "").TrimEnd('\n');
            Assert.Equal((question, answer), (question, now));
        }
    }

    /// <summary>What answers say today on top of what they said then: coils that stand in no piece.</summary>
    [GeneratedRegex("""(?m),\s*"coils": \[[^\[\]]*\]|^  in no piece, .*\n""")]
    private static partial Regex AddedSince();

    /// <summary>A name of two words stands before an option.</summary>
    private static string[] Words(string question)
    {
        string[] words = question.Split(' ');
        return words is ["trace", .. var name, "--json"] ? ["trace", string.Join(' ', name), "--json"] : words;
    }
}
