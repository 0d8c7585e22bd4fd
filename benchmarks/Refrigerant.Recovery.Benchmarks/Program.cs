using BenchmarkDotNet.Running;
using Refrigerant.Recovery.Benchmarks;

if (args is ["gate", _, ..])
{
    return RatioGate.Run(args);
}

if (args is ["longest-block"])
{
    return LongestBlock.Run();
}

BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
