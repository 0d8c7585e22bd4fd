using System;

namespace Refrigerant.Recovery.CoolProp;

/// <summary>
/// No usable CoolProp shared library: none was found, or what was found is for another processor, damaged, too old or not CoolProp.
/// The message says what was tried, how each attempt ended and how to get the library.
/// </summary>
public sealed class CoolPropUnavailableException : Exception
{
    private const string HowToGetIt =
        "Install or build CoolProp's shared library (https://coolprop.org, target \"shared library\") for this system and pass its path to "
        + "CoolPropLibrary.Open, or set the environment variable " + CoolPropLibrary.PathVariable + " to its path, or put it where the "
        + "system's loader finds it. It is never downloaded.";

    /// <summary>Creates the exception.</summary>
    /// <param name="attempts">What was tried and how it ended.</param>
    public CoolPropUnavailableException(string attempts)
        : base($"CoolProp is not available. {attempts} {HowToGetIt}") => Attempts = attempts;

    /// <summary>What was tried and how it ended.</summary>
    public string Attempts { get; }
}
