using Xunit;

namespace Refrigerant.Recovery.CoolProp.Tests;

/// <summary>Tests that count native states or change the environment run one after another.</summary>
[CollectionDefinition("native", DisableParallelization = true)]
public sealed class NativeCollection;
