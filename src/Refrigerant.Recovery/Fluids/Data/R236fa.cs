using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-236fa, 1,1,1,3,3,3-hexafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R236fa
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-236fa",
        Name = "1,1,1,3,3,3-hexafluoropropane",
        CasNumber = "690-39-1",
        Source = "Jiang Pan and Xinfang Rui and Xiaodong Zhao and Liming Qiu, (2012), An equation of state for the "
            + "thermodynamic properties of 1,1,1,3,3,3-hexafluoropropane (HFC-236fa), Fluid Phase Equilib., vol. "
            + "321, 10-16, doi:10.1016/j.fluid.2012.02.012",
        MolarMass = 0.1520384,
        GasConstant = 8.314472,
        ReducingTemperature = 398.07,
        ReducingMolarDensity = 3626,
        CriticalTemperature = 398.07,
        CriticalPressure = 3200000,
        CriticalMolarDensity = 3626,
        AcentricFactor = 0.3769117976336991,
        MinimumTemperature = 179.6,
        MaximumTemperature = 400,
        MaximumPressure = 70000000,
        IdealGas = new IdealHelmholtz(
            logTau: 9.175,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 9.8782, 2.416660386364208 },
                { 18.236, 6.014017635089306 },
                { 49.934, 13.03288366367724 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.04453255, 4, 1.07, 0 },
                { 1.777017, 1, 0.222, 0 },
                { -2.230519, 1, 0.66, 0 },
                { -0.6708606, 2, 1.33, 0 },
                { 0.1587907, 3, 0.227, 0 },
                { -1.425119, 1, 2.33, 2 },
                { -0.6461628, 3, 1.94, 2 },
                { 0.8469985, 2, 1.53, 1 },
                { -0.5635356, 2, 2.65, 2 },
                { -0.01535611, 7, 0.722, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.156362, 1, 1.11, 1.02, 1.42, 1.13, 0.712 },
                { -0.407031, 1, 2.31, 1.336, 2.31, 0.67, 0.91 },
                { -0.2172753, 3, 3.68, 1.055, 0.89, 0.46, 0.677 },
                { -1.007176, 3, 4.23, 5.84, 80, 1.28, 0.718 },
                { -6.902909E-05, 2, 0.614, 16.2, 108, 1.2, 1.64 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.0015997, 7.3483E-06 },
            { 217.83, 0.0010232, 7.9735E-06 },
            { 234.66, 0.00072502, 8.5949E-06 },
            { 251.49, 0.00054438, 9.2077E-06 },
            { 268.32, 0.0004238, 9.8098E-06 },
            { 285.15, 0.0003376, 1.0404E-05 },
            { 301.98, 0.00027259, 1.1E-05 },
            { 318.81, 0.00022135, 1.1623E-05 },
            { 335.64, 0.00017936, 1.2335E-05 },
            { 352.47, 0.00014357, 1.3278E-05 },
            { 369.3, 0.00011151, 1.4797E-05 },
            { 386.13, 7.9653E-05, 1.8139E-05 },
        },
    };
}
