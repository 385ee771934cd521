namespace Coilwright;

/// <summary>What the program says to the shell that started it.</summary>
public static class ExitCode
{
    /// <summary>Done, or the answer is yes.</summary>
    public const int Done = 0;

    /// <summary>The answer is no: out of tolerance, does not fit.</summary>
    public const int AnswerIsNo = 1;

    /// <summary>The input is wrong; every problem was listed.</summary>
    public const int WrongInput = 2;

    /// <summary>Our bug.</summary>
    public const int InternalError = 70;

    /// <summary>Stopped with Ctrl+C; what was found by then was written.</summary>
    public const int Stopped = 130;
}
