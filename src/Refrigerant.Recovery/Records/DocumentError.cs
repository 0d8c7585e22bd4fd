using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Records;

/// <summary>What is wrong at one place of a document. Immutable.</summary>
public sealed record DocumentError
{
    internal DocumentError(string path, string message)
    {
        Path = Require.NotNull(path, nameof(path));
        Message = Require.NotNull(message, nameof(message));
    }

    /// <summary>Where in the document, such as "$.appliance.chargeKilograms"; "$" is the whole document.</summary>
    public string Path { get; }

    /// <summary>A sentence: the place, the value there, and what is valid.</summary>
    public string Message { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Message;
}
