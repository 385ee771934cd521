using System.Collections.Concurrent;
using System.Reflection;
using Microsoft.Playwright;
using Xunit.v3;

[assembly: Coilwright.Browser.Tests.Ground.ClosesItsPages]

namespace Coilwright.Browser.Tests.Ground;

/// <summary>Closes the pages of a test when it is over: a page left open goes on asking its shop, and slows every later test.</summary>
[AttributeUsage(AttributeTargets.Assembly)]
public sealed class ClosesItsPagesAttribute : BeforeAfterTestAttribute
{
    private static readonly ConcurrentDictionary<string, ConcurrentBag<IBrowserContext>> s_open = new(StringComparer.Ordinal);

    /// <summary>A profile that the running test has opened.</summary>
    public static void Opened(IBrowserContext context)
    {
        if (TestContext.Current.Test is { } test)
        {
            s_open.GetOrAdd(test.UniqueID, _ => []).Add(context);
        }
    }

    public override void After(MethodInfo methodUnderTest, IXunitTest test)
    {
        foreach (IBrowserContext context in s_open.TryRemove(test.UniqueID, out ConcurrentBag<IBrowserContext>? opened) ? opened : [])
        {
            _ = CloseAsync(context);
        }
    }

    private static async Task CloseAsync(IBrowserContext context)
    {
        try
        {
            await context.CloseAsync();
        }
        catch (PlaywrightException)
        {
            // the whole browser was closed meanwhile
        }
    }
}
