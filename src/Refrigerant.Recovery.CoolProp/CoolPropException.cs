using System;

namespace Refrigerant.Recovery.CoolProp;

/// <summary>CoolProp refused or failed: what was asked, and the text that CoolProp gave.</summary>
public sealed class CoolPropException : Exception
{
    /// <summary>Creates the exception.</summary>
    /// <param name="fluid">The fluid's name.</param>
    /// <param name="operation">What was asked, with its inputs and their units.</param>
    /// <param name="nativeMessage">The text that CoolProp gave.</param>
    public CoolPropException(string fluid, string operation, string nativeMessage)
        : base($"{fluid}: CoolProp failed at {operation}: {nativeMessage}")
    {
        Fluid = fluid;
        Operation = operation;
        NativeMessage = nativeMessage;
    }

    /// <summary>The fluid's name.</summary>
    public string Fluid { get; }

    /// <summary>What was asked, with its inputs and their units.</summary>
    public string Operation { get; }

    /// <summary>The text that CoolProp gave.</summary>
    public string NativeMessage { get; }
}
