using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-21, dichlorofluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R21
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-21",
        Name = "dichlorofluoromethane",
        CasNumber = "75-43-4",
        Source = "B. Platzer and A. Polt and G. Maurer, (1990), Thermophysical Properties of Refrigerants, "
            + "Springer-Verlag, doi:10.1007/978-3-662-02608-3",
        MolarMass = 0.1029227,
        GasConstant = 8.31451,
        ReducingTemperature = 451.48,
        ReducingMolarDensity = 5110.765599999999,
        CriticalTemperature = 451.48,
        CriticalPressure = 5181200,
        CriticalMolarDensity = 5110.765599999999,
        AcentricFactor = 0.2061,
        MinimumTemperature = 142.8,
        MaximumTemperature = 473,
        MaximumPressure = 138000000,
        IdealGas = new IdealHelmholtz(
            logTau: 1.941888561986215,
            tauLogTau: 0,
            powers: new double[,]
            {
                { -3.5528470434574064, -1 },
                { -0.13630961449927612, -2 },
                { 0.23660909543766726, -3 },
                { -0.04415922913912527, -4 },
            },
            planckEinstein: new double[0, 2]),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.50467662375195, 1, 0, 0 },
                { -0.732431416212257, 1, 1, 0 },
                { -0.868403860880684, 1, 2, 0 },
                { 0.146234705622829, 1, 3, 0 },
                { -0.280576335158724, 1, 4, 0 },
                { 0.864743657302055, 2, 0, 0 },
                { -2.70767234069002, 2, 1, 0 },
                { 3.30476391081085, 2, 2, 0 },
                { -0.210878239585469, 3, 0, 0 },
                { 0.449531450327333, 3, 1, 0 },
                { 0.120779813434928, 4, 0, 0 },
                { -0.277297954448155, 4, 1, 0 },
                { 0.030544129220629, 5, 1, 0 },
                { -44.3864848810647, 0, 3, 0 },
                { 9.26505601085111, 0, 4, 0 },
                { -0.551709104525115, 0, 5, 0 },
            },
            Exponential = new double[,]
            {
                { 1.21128809697908, 2, 3, 0.07470252, 2 },
                { 0.167119476809363, 2, 4, 0.07470252, 2 },
                { -0.0504876793555323, 2, 5, 0.07470252, 2 },
                { 44.3864848810647, 0, 3, 0.07470252, 2 },
                { -9.26505601085111, 0, 4, 0.07470252, 2 },
                { 0.551709104525115, 0, 5, 0.07470252, 2 },
            },
        },
    };
}
