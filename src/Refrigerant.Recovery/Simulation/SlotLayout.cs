using System;
using System.Collections.Generic;

namespace Refrigerant.Recovery.Simulation;

/// <summary>The names and places of everything that is integrated: first the states that the error control watches, then the accounts of what passed.</summary>
internal sealed class SlotLayout
{
    private readonly List<string> _names = [];
    private bool _closed;

    /// <summary>Number of states; accounts follow behind them.</summary>
    public int States { get; private set; }

    /// <summary>Number of states and accounts.</summary>
    public int Count => _names.Count;

    /// <summary>The name of a slot, such as "appliance: energy".</summary>
    public string Name(int slot) => _names[slot];

    /// <summary>A place for a state.</summary>
    public int State(string owner, string quantity)
    {
        if (_closed)
        {
            throw new InvalidOperationException("States come before accounts.");
        }

        _names.Add(owner + ": " + quantity);
        States = _names.Count;
        return _names.Count - 1;
    }

    /// <summary>A place for what a transfer or a heat flow adds up to.</summary>
    public int Account(string owner, string quantity)
    {
        _closed = true;
        _names.Add(owner + ": " + quantity);
        return _names.Count - 1;
    }
}
