using Coilwright.Bench.Meters;
using Coilwright.Workshop.Instruments;

namespace Coilwright.Bench.Tests.Meters;

/// <summary>Instruments as they misbehave, on this machine's own network and through a pair of terminals.</summary>
public sealed class MeterLinksTests
{
    private static readonly TimeSpan s_wait = TimeSpan.FromSeconds(10),
        s_short = TimeSpan.FromSeconds(0.3);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Fragments_are_one_line()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+6.1", new("82", 30), new("1E+03\r", 30), new("\n", 30));
        await using IMeterLink link = await OpenAsync(meter);
        Assert.Equal("+6.1821E+03", await link.AskAsync("READ?", s_wait, Cancel));
    }

    [Fact]
    public async Task An_answer_that_comes_twice_is_taken_once()
    {
        int asked = 0;
        await using SimulatedMeter meter = new(_ => [FormattableString.Invariant($"{++asked}\n{asked}\n")]);
        await using IMeterLink link = await OpenAsync(meter);
        Assert.Equal("1", await link.AskAsync("READ?", s_wait, Cancel));
        await Task.Delay(100, Cancel);
        Assert.Equal("2", await link.AskAsync("READ?", s_wait, Cancel));
    }

    [Fact]
    public async Task An_instrument_that_does_not_answer_is_told_with_what_was_asked()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying();
        await using IMeterLink link = await OpenAsync(meter);
        InstrumentException fault = await Assert.ThrowsAsync<InstrumentException>(() => link.AskAsync("READ?", s_short, Cancel));
        Assert.Equal(InstrumentTrouble.Silent, fault.Trouble);
        Assert.Contains("\"READ?\"", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_without_its_end_is_told_with_what_came()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+6.18");
        await using IMeterLink link = await OpenAsync(meter);
        InstrumentException fault = await Assert.ThrowsAsync<InstrumentException>(() => link.AskAsync("READ?", s_short, Cancel));
        Assert.Equal((InstrumentTrouble.Silent, "+6.18"), (fault.Trouble, fault.Raw));
    }

    [Fact]
    public async Task A_cable_pulled_in_the_middle_of_a_line_gives_no_half_a_number()
    {
        await using SimulatedMeter meter = SimulatedMeter.Saying("+6.18", new("", 50), SimulatedMeter.Part.HangsUp);
        await using IMeterLink link = await OpenAsync(meter);
        InstrumentException fault = await Assert.ThrowsAsync<InstrumentException>(() => link.AskAsync("READ?", s_wait, Cancel));
        Assert.Equal((InstrumentTrouble.Lost, "+6.18"), (fault.Trouble, fault.Raw));
    }

    [Fact]
    public async Task Nothing_there_is_told_with_its_address()
    {
        string address;
        await using (SimulatedMeter gone = SimulatedMeter.Saying())
        {
            address = gone.Address;
        }

        InstrumentException fault = await Assert.ThrowsAsync<InstrumentException>(async () => await OpenAsync(address));
        Assert.Equal(InstrumentTrouble.CannotOpen, fault.Trouble);
        Assert.Contains(address, fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_serial_line_is_asked_through_a_pair_of_terminals()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs Linux's pseudo-terminals");
        using PseudoTerminal line = PseudoTerminal.Open(asked => asked == "READ?" ? "+6.18210E+03\r\n" : "?\r\n");
        await using IMeterLink link = await MeterLinks.OpenAsync(new MeterAddress.Serial(line.Name), "\n", new SerialLine(115_200), Cancel);
        Assert.Equal("+6.18210E+03", await link.AskAsync("READ?", s_wait, Cancel));
        Assert.Equal("?", await link.AskAsync("*IDN?", s_wait, Cancel));
    }

    [Fact]
    public async Task A_device_of_messages_is_written_and_read()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs Linux's pseudo-terminals");
        using PseudoTerminal line = PseudoTerminal.Open(asked => asked == "READ?" ? "+6.18210E+03\n" : "?\n");
        await using IMeterLink link = await MeterLinks.OpenAsync(new MeterAddress.UsbTmc(line.Name), "\n", new SerialLine(), Cancel);
        Assert.Equal("+6.18210E+03", await link.AskAsync("READ?", s_wait, Cancel));
    }

    [Theory]
    [InlineData("/dev/no-such-line")]
    [InlineData("/tmp")]
    public async Task A_line_that_is_none_is_told(string path)
    {
        foreach (MeterAddress address in new MeterAddress[] { new MeterAddress.Serial(path), new MeterAddress.UsbTmc(path) })
        {
            InstrumentException fault = await Assert.ThrowsAsync<InstrumentException>(async () =>
                await MeterLinks.OpenAsync(address, "\n", new SerialLine(), Cancel)
            );
            Assert.Equal(InstrumentTrouble.CannotOpen, fault.Trouble);
        }
    }

    [Fact]
    public async Task A_hundred_and_eighty_thousand_lines_come_with_none_lost()
    {
        using MemoryStream stream = new(
            System.Text.Encoding.ASCII.GetBytes(
                string.Concat(Enumerable.Range(1, 180_000).Select(n => FormattableString.Invariant($"{n}\n")))
            )
        );
        await using LinePump pump = new(stream, "\n");
        int next = 1;
        await foreach (string line in pump.Lines.ReadAllAsync(Cancel))
        {
            Assert.Equal(FormattableString.Invariant($"{next++}"), line);
        }

        Assert.Equal(180_001, next);
    }

    private static Task<IMeterLink> OpenAsync(SimulatedMeter meter) => OpenAsync(meter.Address);

    private static Task<IMeterLink> OpenAsync(string address) =>
        MeterLinks.OpenAsync(MeterAddress.ReadTcp("tcp", address).Value!, "\n", new SerialLine(), Cancel);
}
