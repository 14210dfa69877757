/**
 * Short sequences that keep the first two layers, or all of them but one slot:
 * set-ups are put together from them. Searching for them would take seconds
 * before the first set-up, and for the longer ones minutes.
 *
 * Turns of the last layer before and after are left out. Of sequences that are
 * one seen from another side there is one, and none between turns of the first
 * layer, which only shows another from another side.
 *
 * Shape: the turns of a sequence are letters, `a` for the first of
 *        `FACE_TURNS` (body frame); shortest first, words apart.
 * Source: the case search, asked on a solved cube for all answers of up to ten
 *         turns that place the first two layers, and of up to seven that place
 *         all of them but slot 0; the test asks it again.
 */
import type { FaceTurnSequence } from "./face-turn-sequence";

const KEEPING_TWO_LAYERS = `
dgjilf djglif flrjpd frlpjd benbken dgogmhf dhoimif djfjdkf dkfldlf
dlojflm enbkenb fjmldjo fkdjfjd fldlfkd fqmpopd frmroqd dgfpdifr
dglifrjp dglmjoif dgmifgoi dgmlojif dgoifgmi dhohfgmi didgerkp
difgjgli difgkgki difpdgfr difpeger djdifglf djepdqjp djflfpdr
djfrolmp djidgflf dkfkfpdr dkfqmpop ebkenbkn ehqenhqn enhqenhq
fkdhoimi fkdkdifg fldgmjoi fldjdifg fleifhli flfpdrjd flpfrdjd
fpdiereg fpdifrdg fpdrkrkp fpdrlrjp fpfregki fqmqdrop frdifpdg
frjolmpd frjpdgli frmpdrop frojmlpd fropdrmp aeaecjqcq aebecjqbq
aebqajqke aececjqaq aehncjheq aejecjqlq aekecjqkq aekhajhbe aelecjqjq
aeqncjhnq beaebkncn beanbkecn bebebknbn bebnbkebn becebknan becnbkean
behebknqn behnbkeqn bejebknln bejnbkeln bekebknkn beknbkekn belebknjn
belnbkejn beqebknhn beqnbkehn ceaealhch cebealhbh cebhclhke cecealhah
cehnalqnh cejealhlh cekealhkh cekqclqbe celealhjh ceqnalqeh dancdance
daocdamce dbenkfben dbkenbkdn dbngnbepd dbnpknbgd dgdjfidle dgebnpnbd
dgjhdgflf dgjifjdkf dgkmjoikf dgliflrkp dglijfrjp dglijgjif dglikfrjp
dglikgjif dglilfrjp dglilgjif dgmlokilf dhagbdaeg dhagcfhli dhagcgejd
dhdqfhdqe dhnamcmhf dhoaocnhf dhoimjilf dhqenhqdn didgejrjp didhogmhe
didqfgdqe diegkgkid diepegerd difhlogmh difldjglf dingdinge djdafldce
djdifhlif djepafcer djepcpaqd djfidlfjg djfjqmpop djfqmpolp djfrjolmp
djfrjpdlf djfrkolmp djfrkpdlf djfrlolmp djfrlpdlf djfrokmjp djgkifrjp
djgkmjoif djglogmhf djilfjdgf djilgfijg dkdafkdce dkdaohmce dkdohfhfm
dkelelekd dkenbfben dkepdrdkf dkfldglif dkflrolmp dkfmqfqdo dkfpfrekf
dkgmlokif dlidgerjp dliecfage dloilgjfm dmkeqdmqn dnbkenbkd dnhqenhqd
dohbqfmbh dohdhfmkf dohehfmke dohfhfmkd dohkqfmbq dohmhfmko dohnhfmkn
dohohfmkm dojgliflm dolijgmjf dpbnkgnbd dperdjele drkpkperd eaealhchc
eaebkncnb eaecjqcqa eafjdcflf eafkdcfkf eajebqajq ealhjhcje ealhkhcje
ealhlhcje eanbkecnb eancfancf eaocfamcf eaohmcfkf ebealhbhc ebebknbnb
ebecjqbqa ebenkeben ebgreknip ebhclhkec ebhqknbhq ebipnbegr ebknjebkn
ebknjnbke ebknkebkn ebknknbke ebknlebkn ebknlnbke ebnbkebnb ebqajqkea
ecdkfadkd ecdlfadjd ecealhahc ecebknanb ececjqaqa ecjqjqale ecjqkqale
ecjqlqale eclebhclh ecmadcoad ecmqoadkd ecnadcnad ecnbkeanb egrknbipn
ehdpfhdrd ehdqfhdqd ehebknqnb ehfohnkfo ehnalqnhc ehnbkeqnb ehncjheqa
ehoimhfgf ehqnaehqn ehqnanhqe ehqnbehqn ehqnbnhqe ehqncehqn ehqncnhqe
eicdaegjf eifgjepdr eingfingf eipbekgrn ejealhlhc ejebknlnb ejecjqlqa
ejelfperf ejfgdlfif ejipegrje ejnbkelnb ekdohehfm ekealhkhc ekebknknb
ekecjqkqa ekenbeben ekfmqeqdo ekhajhbea ekhqbnbhq eknbkeknb ekqclqbec
eldrfjdpd elealhjhc elebknjnb elecjqjqa elejdiegd elipegrle elnbkejnb
enbdbenkf enbdkenbf enbebenke enbekenbe enbfbenkd enbfkenbd enbhbenkq
enbhkenbq eobkenbko eohqenhqo epafcerld epdrleifg epnrdpnrd eqdmqnkdm
eqebknhnb eqfhdqfhf eqfidqfgf eqmpoqdrd eqnalqehc eqnbkehnb eqncjhnqa
fbenkdben fbkenbkfn fbniknbrf fbnrnbeif fcmafcoae fcnafcnae fgkikiegf
fhqenhqfn fibnkrnbf fiegfleje fjmpjrldo fjpeadcre fjpfregli fkdidgekd
fkdjfrjpd fkdjgmjoi fkdohdhfm fkeifgfkd fkejejekf fkenbdben fkfcdkfae
fkfcmqoae fkfmqdqdo fkrojmkpd fldgjifjd fldgjmjoi fldgkifjd fldgkmjoi
fldglifjd fldglmjoi fldgmkoli fldhoimji fldlhoimi fldpfjdlr fleiaichf
fleicdaeg flfcdjfae flfpdqjpd flpjdlfrd flpjrdplr flrjmroqd flrkolmpd
flrkpdgli fokehfohn fpdjflrjd fpdqjmroq fpeieregf fperkrkpf fpfhdrfhe
fpfqmroqe fpfrelgli fpnrfpnre fqcradqjp fqcrarelf fqcrbfcer fqfhdqfhe
fqmcmanqd fqmpolpjd fqncoaoqd frebninbf frfldpfje frjpdjgki frjpjdgli
frjpjrlpd frjpkdgli frjpkrlpd frjpldgli frjplrlpd frkolmpkd frlpdlfkd
frlqfrdjd frojmkpjd adbpmcobrf adcrelfjpe adqjplfqcr adrfqcopmq
aealhchcje aebkncebkn aebkncnbke aecjqcqale aegdicerfp aegjfleicd
aejecrmqor afcerldjep afibocmgbd afiegfcqjq bdafibocmg bdbdoqfqfm
bdbenkfken bdbfmhfhdo bdkenbfken bdmbehdmhn bdoqbhfmkh bdoqdqfmbf
bdoqeqfmbe bdoqfqfmbd bdoqkhfmkq bdoqmqfmbo bdoqnqfmbn bdoqoqfmbm
bdpcrbfiag beajekhajh bealhbhcje bebdoqeqfm bebenkeken bebfmhehdo
bebhqknkhq bebknbebkn bebknbnbke becjqbqale beclekqclq begrkebipn
behdmhnbdm behqnkehqn behqnknhqe beipbnkgrn bekenbeken bekgrnkeip
bekhqbnkhq bekipebngr benkdbenkf benkdkenbf benkebenke benkekenbe
benkfbenkd benkfkenbd benkhbenkq benkhkenbq beqfoqnbfo bfbdoqdqfm
bfbenkdken bfbfmhdhdo bfcdpbmaor bfiagbdpcr bfkenbdken bfobeqfoqn
cdaegjflei cdpbmaorbf cdperdahlh cealhahcje cebknaebkn cebknanbke
cecjqaqale celeagohmg cerfpaegdi cerldjepaf cfagejdlie cfbioambgd
cfgdhamioh cfhlijdhag daegjfleic dafibocmgb dagcfmglio dahmgochfi
daichflgjh dajhlhcekd daogmcfgli dbdbfmhfho dbdoqfqfmb dbebfmheho
dbehdmhnbm dbeibnkrfn dbenbkenkf dbenkfkenb dberebnifn dbfbfmhdho
dbfmhfhdob dbhkfmqkho dbhqbkhqkf dbkhqbkhqf dbmbfmhoho dbnbfmhnho
dbnlnbjekd dbnqdmqebm dbobfmhmho dbparfbicg dbpmcobrfa dbqkfmqbho
dcfbioambg dcgafmilgo dcqahcqahf dcqaicqagf dcrelfjpea dgejpfreli
dgfjmldoif dgflhoimjh dgfmjoldif dgfpdhdger dgfpdijflr dgfpdlijfr
dgfrdjilfp dgjhlfjdgf dgjhlgfijg dgjidifglf dgjiepdqjp dgjiflfpdr
dgjifrolmp dgjijfldlf dgjikojflm dgjilgjilf dgjrjilplf dgkilfkdjf
dgkilmlfjo dgkplijrkf dglidifgjf dglifjpfrd dglifrojmp dglijflrkp
dglijgkilf dglikflrkp dglikgkilf dglilflrkp dglilgkilf dglmjifgoi
dglmjngmhf dglmjojilf dglrjilpjf dgmifgjoli dgmkoifrkp dgmloifrjp
dgmpoimrfo dgnbepebfn dgogaocnhf dgogmijilf dgohciamhf dgoifmjmlo
dgoifmkmko dhaijgchlf dhamiohcfg dhaoambgfg dhbkhqbkqf dhbpmrbgfg
dhbqfmbhko dhcqahcqaf dhdhfmkfko dhdobfbfmh dhdqdnqdhn dhehfmkeko
dhejmleohf dhekdmknhm dhemjolehf dhenhqenqf dhenqfhenq dhenqfqenh
dhepfreiki dhfhfmkdko dhfhmjfjdo dhfmkfkdoh dhkqfmbqko dhlrjhlpjf
dhmhfmkoko dhmpohmrfo dhnamcimif dhnbdmbehm dhnhfmknko dhninifokm
dhocgahmif dhocgaimhf dhogciamhf dhohfmjmlo dhohfmkmko dhoinifgoi
dhoinlojif dhqbkhqbkf dicerfpaeg dicgjiaglf dicgkiagkf dicqagcqaf
didbopmbeg didbparaeg didgdpdqkp didgekpfrd diegerkpkf diepfgeqkp
diepfrehki difgjfrlpd difgjgmloi difgkepdrd difgoidgfm difgrjglip
difhrngnhp difiqbgbgq difldgfijg difldjhlif difpdgjflr dijglfjilg
dikgfidkfg dilhlhkglf djdlojflfm djepdqojmp djepdrlrkp djerlpjekf
djfgdilgfi djfgqcoaiq djfidglifg djfidlejdg djfijdkflg djfipafcgr
djfjdlglif djfjmqfqdo djfjpfrekf djfkdglijf djfkrlpdkf djfldlidge
djflfmpdro djflfmqdqo djflifpdgr djflojdlfm djfokdjfkm djfpaifgcr
djfqcgoiaq djfrjokmjp djfrjpjdkf djfrkokmjp djfrkpjdkf djfrlokmjp
djfrlpjdkf djfroilgmp djgjmjoikf djgkiflrkp djgkijfrjp djgkijgjif
djgkikfrjp djgkikgjif djgkilfrjp djgkilgjif djglfpdifr djglgoimif
djglijglif djglmifgoi djglmlojif djgloifgmi djgrjilplf djhailgchf
djicgliagf djidgejdkf djidgfglif djikhjhjgf djilgflikg djmgolmifo
djoamlocfm djojgkiflm djojglilfm djqmpolqfr djrjgliplf djrjglplif
djrlqfcpaq dkdkfmqfqo dkdoifgmkf dkdqmpoqer dkebjnlnbd dkecqlqajd
dkekfmqeqo dkelrjpelf dkenbfkenb dkenbkenbf dkepdpmpop dkepdrldlf
dkeqdmqnkm dkeqmpoqdr dkeqmrdqop dkfgdikgfi dkfijdjflg dkfjdglijf
dkfjrlpdkf dkfkdlidge dkfkfmpdro dkfkfmqdqo dkfkifpdgr dkfkojdlfm
dkfleifglf dkflfpdqjp dkflidlfjg dkflqmpolp dkflrjolmp dkflrjpdlf
dkflrkolmp dkflrkpdlf dkflrlolmp dkflrlpdlf dkflrokmjp dkfoieiehm
dkfojdlmkf dkfqogoinq dkfrjpkdlf dkfrjpldkf dkfroikgmp dkgjifkrlp
dkgmlolilf dkhbfmhkqo dkhqbkhqbf dkicgkiagf dkiegerkpf dkmbokmbfo
dkmgokmifo dkmkfmqoqo dknhdmhekm dknkfmqnqo dkoglijmkf dkoidgfmkf
dkoidifhfm dkojfldmkf dkojmkfojm dkokfmqmqo dkokmjojfm dkolgjimkf
dkplgjrkif dkqbfmhbqo dkrbpkrbpf dkrkgkikpf dkrkpeiegf dkrolmjpjf
dlejmlejfo dlfipadcgr dlfjildjfg dlfkdjgkif dlfkdmlfjo dlfkrojmkp
dlgjifkdlf dlgjifldkf dlgmjohdge dlidgelrkp dlidgfgjif dlijgjfikg
dlikgjfijg dlmbojmbfo dlmjfjpkro dlmjfokmjo dlmjnchafm dlmkfjdkfo
dloamjocfm dlohlhjhfm dloikgjfjm dlojfkijgm dlojgjilfm dlqbmhaoaq
dlrbpjrbpf dlrjglpjif dlrjhlpjhf dlrkgjikpf dlrlojmpkf dlrojmpdle
dmbehdmhnb dmbfkdbfko dmbfldbfjo dmbkenbkdm dmgfpdifro dmgfqdifqo
dmgnifgnio dmgoifgmio dmgojmiolf dmgokmiokf dmhbdmqbeh dmhekdmknh
dmhnbdmbeh dmhqenhqdm dmkfldkojf dmkfoirkgp dmlejolejf dnbdbfnifg
dnbeibnkrf dnberebnif dnbfldbfjn dncfldafjn dncgafnplr dnciagmifm
dngfqdifqn dngnbepebf dngnifgnin dnhfqdhfqn dnhmhfnrop dnlmjflojn
dnlnjflnjn dnpknbgebf doagcfmgli doahcejdlm doaicfmgji doamjocmlf
doamlocmjf dobdbfmhfh dobebfmheh dobfbfmhdh dobhkfmqkh dobkenbkdo
dobmbfmhoh dobnbfmhnh dobobfmhmh dobqkfmqbh docfjdaflm docfldafjm
docgafmilg dochanlojf dociafmijg dogmifgoim dogmifkikg dogmiflijg
dogoicgafn dohdgfgmkf dohfhmjfjd dohjhlhflm dohlhjhmjf dohmhflmlo
dohoimifkm dohqenhqdo doidgaicem doifgmidgf doifgmjgli doifgmkgki
dojdlmjflf dojfjdkfkm dojfjmqfqd dojflfmpdr dojflmjdlf dojflmkdkf
dojgjilmlf dojglilmjf dokdkfmqfq dokekfmqeq dokfkfmqdq dokhbfmhkq
dokmkfmqoq doknkfmqnq dokokfmqmq dokqbfmhbq dolijgjflm dolilgjfjm
dolmjfkokm dolmjflojm dolmjfmrop dolmlfqmqo dolmlokmkf dolojflmjm
doqbhfmkhb doqdqfmbfb doqeqfmbeb doqfqfmbdb doqkhfmkqb doqmqfmbob
doqnqfmbnb doqoqfmbmb dpbmaorbfc dpcrbfiagb dpeagfiecr dperdahlhc
dpermperfo dpfcqormaq dpfjdrfplr dpfkdrfpkr dpfrmpdrfo dpjrfmarco
dpknbgebfn dqbhfmkhbo dqbkhqbkhf dqdokfkfmq dqdqfmbfbo dqebdmbnqm
dqenhfhenq dqenhfqenh dqenhqenhf dqeqfmbebo dqfmbfbdoq dqfqfmbdbo
dqjmroqlfp dqjplfqcra dqkhfmkqbo dqmqfmbobo dqnkdmkeqm dqnqfmbnbo
dqoqfmbmbo drbpkrbpkf drbplrbpjf drfqcopmqa drjpfmcrao drkgkikpkf
drkglikpjf drkpeiegkf drleifgjep drlojpfrmp eadcdqojmq eadcrelfjp
eadhfmkoce eadohfmcke eaecqelejq eafkdohmce eafmkdohce eagcqaicqe
eagfiecrdp eagkicgkie eahceqcnaq eahchjhlhe eahcqahcqe eahfmkdoce
eahlhecqjq eahlnjnche eaiangbelp eajekhajhb eakdohfmce ealhahcjec
ealhbhcjeb ealhchcjea ealheqcjnq ealhnqcjnh eamkdohfce eaohfmkdce
eaoimcerjp ebdbenkfkn ebdkenbfkn ebdmbnqdmq ebdoqeqfmb ebebenkekn
ebehqnknhq ebekenbekn ebenbkenke ebenkekenb ebfbenkdkn ebfkenbdkn
ebfmhehdob ebfobnhfoh ebhbenkqkn ebhkenbqkn ebhqbkhqke ebhqknkhqb
ebkhqbkhqe ebknaebknc ebknanbkec ebknbebknb ebknbnbkeb ebkncebkna
ebkncnbkea ebknhebknq ebknhnbkeq ebknqebknh ebknqnbkeh ebmbenkokn
ebmkenbokn ebnbenknkn ebngrbekip ebnhqeknhq ebnipknbgr ebnkenbnkn
ebobenkmkn ebokenbmkn ebqbenkhkn ebqkenbhkn ecdkfmqoae ecdokfmqae
eceahejelh ecfafhmloh ecfagejdli ecfmqdoake ecfqdokmae ecjqaqalec
ecjqbqaleb ecjqcqalea ecjqehalnh ecjqnhalnq eckfmqdoae eclekqclqb
ecmpoaegli ecmqdokfae ecokfmqdae ecpcnrbeji ecqaehanch ecqahcqahe
ecqaqlqjqe ecqdokfmae ecqjnlnaqe ecqjqeahlh ecrahcpahe ecrdpeagfi
ecrkparkpe egbijgbile egdicerfpa egegrkikip egehqninhq egeipbibgr
egjfleicda egjiepcpaq egkiagkice egnhqeinhq egpehbgpbq egpeqkgpkh
egrkebipnb egrkgkipei egrkhkipeh egrkikipeg egrkpkiper egrkqkipeq
egrkrkipep ehalnhecjq ehanlnjhce ehbgpbqegp ehbhenqkqn ehbkhqbkqe
ehbkqnhbkq ehbkqnqbkh ehbngpbegp ehbqenhkqn ehcjeqnalq ehcqahcqae
ehcrahcpae ehdhenqfqn ehdlrjpfhe ehdmhnbdmb ehdobebfmh ehdqenhfqn
ehdrlpjfhe ehegrkhkip ehehenqeqn ehehqnhnhq eheipbhbgr ehenhqenqe
ehenqehenq ehenqeqenh eheqenheqn ehfhenqdqn ehfmkekdoh ehfqenhdqn
ehjhceaele ehjhlhahce ehkhenqbqn ehkirkqeir ehkqenhbqn ehlqjhlqje
ehlrjhlpje ehmhenqoqn ehmpohmreo ehmqemqmhm ehmqenhoqn ehmqohmqeo
ehnhenqnqn ehnhqehnhq ehnqenhnqn ehoagcimhe ehogaicmhe ehohenqmqn
ehoimierkp ehoqenhmqn ehqbkhqbke ehqngehqni ehqngnhqei ehqnhehqnh
ehqnhnhqeh ehqniehqng ehqninhqeg ehqnkehqnb ehqnknhqeb ehqnpehqnr
ehqnpnhqer ehqnqehqnq ehqnqnhqeq ehqnrehqnp ehqnrnhqep eiegoiegem
eiegrkgkip eiehqngnhq eieipbgbgr eifgjfjdlf eifgjfkdkf eifhmloijf
einhqegnhq eipbgbgrei eipbhbgreh eipbibgreg eipbnkgrnb eipbpbgrer
eipbqbgreq eipbrbgrep eirehkirkq eireqbirbh ejdliecfag ejeceahlhe
ejecqnlnaq ejecrmqora ejegrkiple ejelojelem ejflojdlem ejfrolmpjf
ejgbilgbie ejgkiperle ejglqjilqe ejgrkipele ejhlqjhlqe ejiegrkple
ejoamlocem ejobmlobem ejpegrkile ejpfrelidg ejqlqecqaq ejrkipegle
ekdbenkfbn ekdkenbfbn ekdmknhdmh ekebenkebn ekehqnbnhq ekekenbebn
ekenbekenb ekenbkenbe ekfbenkdbn ekfkenbdbn ekfoknqfoq ekgrnkeipb
ekhbenkqbn ekhkenbqbn ekhqbkhqbe ekhqbnkhqb ekipebngrb ekmbenkobn
ekmkenbobn eknbenknbn ekngrbnkip eknhqebnhq eknipkebgr eknkenbnbn
ekobenkmbn ekokenbmbn ekqbenkhbn ekqkenbhbn eldgmjoild eldjmlfjeo
eleaecqjqe eleagohmgc eleahnjnch elegrkipje elejmlejeo elfjpeadcr
elgkiperje elgrkipeje elhjheahch elidgejpfr eliegrkpje elmbojmbeo
elmcojmaeo elpegrkije elqjhlqjhe elrbpjrbpe elrjhlpjhe elrkipegje
enhbhenqkq enhbqenhkq enhdhenqfq enhdqenhfq enhehenqeq enheqenheq
enhfhenqdq enhfqenhdq enhkhenqbq enhkqenhbq enhmhenqoq enhmqenhoq
enhnhenqnq enhnqenhnq enhohenqmq enhoqenhmq enkdbenkfb enkdkenbfb
enkebenkeb enkekenbeb enkfbenkdb enkfkenbdb enkhbenkqb enkhkenbqb
eoagcifgfm eoaicemrjp eoamjocmle eobmjobmle eobngbekpm eobnpnbegm
eobobemgmi eohfhempdr eohmqohmqe eoiebnrnbm eoiegmiege eoimqogmqe
eojelmjele eojflmjdle eorkebinbm epdqojmpld epdrldkfkd epdrldlfjd
epegrkrkip epehqnrnhq epeipbrbgr epermpereo epnhqernhq eqagcqaice
eqahcqahce eqalehncjh eqbhenqkhn eqbirbheir eqbkhnhbkq eqbkhnqbkh
eqbkhqbkhe eqbnirbeir eqbqenhkhn eqcjnqealh eqcnjnlqae eqdhenqfhn
eqdokekfmq eqdqenhfhn eqegrkqkip eqehenqehn eqehqnqnhq eqeipbqbgr
eqenhehenq eqenheqenh eqenhqenhe eqeqenhehn eqfgjildqe eqfhenqdhn
eqfjglidqe eqfmbebdoq eqfoqnbfob eqfqenhdhn eqjglqjile eqjhlqjhle
eqkgpkhegp eqkhenqbhn eqkqenhbhn eqlqaeceje eqlqjqcqae eqmcrapoqe
eqmhenqohn eqmpopegki eqmqenhohn eqmrcpaoqe eqnhenqnhn eqnhqeqnhq
eqnqenhnhn eqohenqmhn eqoheohoqo eqohmqohem eqoimqogem eqoqenhmhn
erbplrbpje eregrkpkip erehqnpnhq ereipbpbgr erfpaegdic erkpcrkpae
erldjepafc erlpeiaich ernhqepnhq fadbpmcobr fagejdliec fahcpahcrd
fahcqahcqd farcdopjrm fbdbdoqfqm fbdoqdqfmb fbebdoqeqm fbegebnpdn
fbenbkenkd fbenkdkenb fbepbnkgdn fbeqfoqnbo fbfbdoqdqm fbfmhdhdob
fbhkdohbqm fbhqbkhqkd fbicgdbpar fbioambgdc fbkhqbkhqd fbmbdoqoqm
fbnbdoqnqm fbnhfohebo fbnjnblekf fbobdoqmqm fbqkdohkqm fcdpbmaorb
fcerldjepa fclqjqaekf fcmroadrjp fcpaqdjrlq fcqormaqdp fcradorjpm
fgbijgbild fgbikgbikd fgdhamiohc fgjepdrlei fgjmlidgoi fgkieperkd
fgkrjpkild fgkrkpkikd fglidoagcm fhbkhqbkqd fhbqdokqbm fhdhdobfbm
fhdobdbfmh fhebfobnho fhehdobebm fhenhqenqd fhenqdhenq fhenqdqenh
fhfhdobdbm fhfmkdkdoh fhkqdokhbm fhlijdhagc fhlogmhjdi fhmhdobobm
fhnhdobnbm fhnkfokeho fhohdobmbm fhqbkhqbkd fiagbdpcrb fibocmgbda
fidahmgoch fidgoifgdm fidkfgdikg fidlfgdijg fiecrdpeag fiegfcqjqa
fiegoiegdm fiknbrebdn filgdocgam fjdipcfagr fjdkflrkpd fjdkfojdlm
fjdkgmloki fjdlpjfldr fjelojeldm fjgbilgbid fjgjmloikd fjgkrlpkid
fjglqjilqd fjglrjilpd fjgmloifje fjhboqcmch fjmcolmado fjmldkplro
fjmlrlpjdo fjmpkrldlo fjmqjqlqdo fjobmlobdm fjokdlfkdm fjoldlikgm
fjoldmkolm fjolnaqcdo fjpfrdrlpd fjpfrejgki fjpkrldplr fjplrldpkr
fjrlpdjfkd fjrlpdkfjd fjrolmqfre fkdglijfkd fkdglikfjd fkdgmpkroi
fkdhmrmpnh fkdjdifhli fkdjepdrjd fkdjgjifjd fkdjgjmjoi fkdjgkifjd
fkdjgkmjoi fkdjglifjd fkdjglmjoi fkdjgmkoli fkdjhoimji fkdjpfjdlr
fkdkdohfhm fkdkdoifgm fkdkfjpfre fkdkmlfjdo fkdkpdifgr fkdlfrjpld
fkdlgjifkd fkdmlfjokd fkdmpepeqo fkdplfldjr fkdrfpkrdp fkeahjhclf
fkeblnjnbf fkehfohnko fkehogfhmi fkehoimhfg fkeifgjfjd fkeifioimi
fkejgliejd fkekdohehm fkenbdkenb fkenbkenbd fkfhoimheg fkfkdohdhm
fkfmpdrokd fkgbikgbid fkgkieperd fkgkrkpkid fkgmjolild fkhbdoqbhm
fkhqbkhqbd fkijrlgkpd fkmjrlpokd fkmkdohohm fkmkolmldo fkmldjfokd
fkmlokdmlo fkmpfpdqdo fkmpfrdokd fkmrjplokd fknkdohnhm fknqfoqeko
fkobmkobdm fkokdohmhm fkormkopdm fkparkpcrd fkperegkid fkqbdoqkhm
fkrlpdkgji fkrojmjpjd fldgjilfkd fldgjmkoli fldgkilfkd fldgkmkoli
fldglilfkd fldglmkoli fldgmpjroi fldharmpch fldhramchp fldicpdrag
fldipcdagr fldjdohfhm fldjdoifgm fldjfjpfre fldjmlfjdo fldjpdifgr
fldkfrjpld fldkgjifkd fldlfjrjpd fldlidgekd fldlohdhfm fldmkfldko
fldpfjelfr fldpfrjpdr fldplfkdjr fldrfpjrdp flegjilekd fleifgjgki
fleifhmloi flfjmldjdo flgjhdaich flglrjijpd flglrjipjd flgrlpjijd
flhoimjhdg flmcojmado flmlrjpjdo flmlrkpdjo flormjopdm flparjpcrd
flpfrdrjpd flpfrelfkd flpjrdjpkr flpkqlqlrd flqcpjraqd flrjdifpdg
flrjmpdrop flrjojmlpd flrjopdrmp flrjplrjpd flrjrmpopd flrkpdjgki
flrkpjdgli flrkpjrlpd flrkpkdgli flrkpkrlpd flrkpldgli flrkplrlpd
flrlolmpkd fobdjfbdlm fobdkfbdkm fobeqfoqnb fobkenbkfo fohbfoqbnh
fohebfobnh fohnkfokeh fohqenhqfo foidgmifgd foidkfgdkm foidlfgdjm
foiegmiegd foimqogmqd foimrogmpd fojelmjeld fokdjfkmld fokdmgpkir
fpaegdicer fpahcrahcd fparkpcrkd fparlpcrjd fpdgqnrniq fpdgrlrjip
fpdhpbrbhr fpdifrldjg fpdjflqjpd fpdjfrdplr fpdrkeifgf fpdrldgjif
fpdrlrojmp fpdrmpfrdo fpeidgeqkp fpeidrehki fperegkikd fpfbicgcer
fpfbmiober fpfrekidgf fpfrfifhki fpjqjqkrjd fpkrdpfkdr fplrjdlpjr
fqahcqahcd fqbhdobqkm fqbiogbrdr fqbkhqbkhd fqcmcobrdr fqcopmqadr
fqcplraqjd fqdokdkfmq fqdqdokfkm fqdqoldlfm fqeidgepkp fqekfoknqo
fqelojemqd fqenhdhenq fqenhdqenh fqenhqenhd fqeolmjeqd fqeqdokekm
fqfhfnhfqn fqfmbdbdoq fqfqdokdkm fqjglqjild fqkhdobhkm fqmarcpoqd
fqmarcqopd fqmpnjmlpd fqmpnpdrmp fqmqdokokm fqmqdolojm fqmrapcoqd
fqnbfobeqo fqncoapopd fqnpnpdmko fqnqdoknkm fqoimqogdm fqoqdokmkm
frdgflpjdi frdifjpldg frdifpldjg frdifqfreg frdjqmpolq frdlojfmpd
frdolmjfpd frelidgejp frjglpjild frjolmlpjd frjolnroqd frjolpdrmp
frjpdgmloi frjpdlidgf frjpfpdrld frjpjdjgki frjpjrkpjd frjpkdjgki
frjpkrkpjd frjpldjgki frjplrkpjd frkijplgkd frkpjdkfld frkpjojdlm
frlglpjijd frlpdgmjoi frlpdjdifg frlpeifhli frlpfpdrjd frlpjrlpjd
frlpkmldjo frlpldjfjd frlqjdlfrd frlqjrdplr frmpdokokm frmpdolojm
frmqapcoqd frmrcmanqd frmroplpjd frnbeiebdn froimpogdm frojmpdgli
frokmpdgki fropdrlmjp
`;

const KEEPING_ALL_BUT_SLOT_0 = `
fjd fkd fld gji gki gli difg idgf epdrd fpfre frjpd frkpd frlpd gmjoi
gmkoi gmloi gogmh hoimi dgjilf difhji difhki difhli djglif dohfhm
doifgm elrjpe epdrjd epdrkd epdrld erlpje fjdgji fjdgki fjdgli fjeifg
fjpfre fjrjpd fjrkpd fjrlpd fkdgji fkdgki fkdgli fkeifg fkpfre fkrjpd
fkrkpd fkrlpd fldgji fldgki fldgli fleifg flpfre flrjpd flrkpd flrlpd
fmldjo fojdlm frjpjd frjpkd frjpld frkpjd frkpkd frkpld frlpjd frlpkd
frlpld gjhdgf gjifjd gjifkd gjifld gjmjoi gjmkoi gjmloi gjogmh gkhdgf
gkifjd gkifkd gkifld gkmjoi gkmkoi gkmloi gkogmh glhdgf glifjd glifkd
glifld glmjoi glmkoi glmloi glogmh gmjoji gmjoki gmjoli gmkoji gmkoki
gmkoli gmloji gmloki gmloli gplijr grjilp hjmloh hmjolh hoimji hoimki
hoimli idgejd idgekd idgeld ifldjg ilfjdg ipdgfr ipeger mjplro mlfjdo
mpjrlo oglijm ohdhfm oidgfm oilgjm ojfldm olgjim olijgm pdifgr pdjflr
peiegr pfjdlr pjdlfr pjfldr plgjir rjglip rlojmp rolmjp benbken
bhqbkhq dafjdcf dafkdcf dafldcf daogmcf daohmcf daoimcf dgogmhf
dhagcfg dhagcgf dhfhmko dhoimif diaichf dicdaeg dieldjg difgfjd
difgfkd difgfld djejekf djfjdkf djglhfg djilfjg dkelelf dkfldlf
dkpdrkf dkperkf dkpfrkf dlojflm dnbdben doagcfm doahcfm doaicfm
ecdjfae ecdkfae ecdlfae ecmpoae ecmqoae ecmroae ejmlejo ekdjfje
ekejeje ekidgke ekiegke ekifgke eldlfke eleleke emcpaeo emcqaeo
emcraeo empdrdo emqdqdo enbfbfn enbkenb epcpaqe epdqjpd epdqkpd
epdqlpd eqcrare eqmpope ermroqe fjdidgf fjdjfjd fjdjfkd fjdjfld
fjdjgji fjdjgki fjdjgli fjdkfjd fjdkfkd fjdkfld fjdkgji fjdkgki
fjdkgli fjdlfjd fjdlfkd fjdlfld fjdlgji fjdlgki fjdlgli fjfpdrd
fjmldjo fjojdlm fjrjpjd fjrjpkd fjrjpld fjrkpjd fjrkpkd fjrkpld
fjrlpjd fjrlpkd fjrlpld fkdidgf fkdjfjd fkdjfkd fkdjfld fkdjgji
fkdjgki fkdjgli fkdkfjd fkdkfkd fkdkfld fkdkgji fkdkgki fkdkgli
fkdlfjd fkdlfkd fkdlfld fkdlgji fkdlgki fkdlgli fkfpdrd fkmldjo
fkojdlm fkrjpjd fkrjpkd fkrjpld fkrkpjd fkrkpkd fkrkpld fkrlpjd
fkrlpkd fkrlpld fldidgf fldjfjd fldjfkd fldjfld fldjgji fldjgki
fldjgli fldkfjd fldkfkd fldkfld fldkgji fldkgki fldkgli fldlfjd
fldlfkd fldlfld fldlgji fldlgki fldlgli flfpdrd flmldjo flojdlm
flrjpjd flrjpkd flrjpld flrkpjd flrkpkd flrkpld flrlpjd flrlpkd
flrlpld fmpfreo fmqfqeo fpfrdjd fpfrdkd fpfrdld fqmpopd frjqfre
frkqfre frlqfre frmroqd frojmpd frokmpd frolmpd gjgoimi gjidifg
gjijfjd gjijfkd gjijfld gjijgji gjijgki gjijgli gjikfjd gjikfkd
gjikfld gjikgji gjikgki gjikgli gjilfjd gjilfkd gjilfld gjilgji
gjilgki gjilgli gjmjoji gjmjoki gjmjoli gjmkoji gjmkoki gjmkoli
gjmloji gjmloki gjmloli gjplijr gjrjilp gkgoimi gkidifg gkijfjd
gkijfkd gkijfld gkijgji gkijgki gkijgli gkikfjd gkikfkd gkikfld
gkikgji gkikgki gkikgli gkilfjd gkilfkd gkilfld gkilgji gkilgki
gkilgli gkmjoji gkmjoki gkmjoli gkmkoji gkmkoki gkmkoli gkmloji
gkmloki gkmloli gkplijr gkrjilp glgoimi glidifg glijfjd glijfkd
glijfld glijgji glijgki glijgli glikfjd glikfkd glikfld glikgji
glikgki glikgli glilfjd glilfkd glilfld glilgji glilgki glilgli
glmjoji glmjoki glmjoli glmkoji glmkoki glmkoli glmloji glmloki
glmloli glplijr glrjilp gmjngmh gmkngmh gmlngmh gmpjroi gmpkroi
gmplroi gmrmpni gnropoi gogmiji gogmiki gogmili grngnhp grogmhp
haijgch haikgch hailgch harmpch harnpch haropch hjhjhkh hjijgkh
hkdgfkh hkdhfkh hkdifkh hkhlhlh hkilglh hlrjhlp hmrmpnh hnamcmh
hnropoh hoaocnh hoinjoi hoinkoi hoinloi hqbgbgq hqbkhqb hramchp
hranchp hraochp hrninip hroimip icgjiag icgkiag icgliag icpdrag
icperag icpfrag idaichf idcdaeg idgfgji idgfgki idgfgli idhjilf
iecfafg iecfagf iegerkp iepdrdg ifpfreg ijplgjr ikgjijg ikhjhjg
ikogmkg ikohmkg ikoimkg ildjglf ilfjegf ilglikg ilhlhkg ipcdagr
ipceagr ipcfagr iqbibhq mbojmbo mbokmbo mbolmbo mgojmio mgokmio
mgolmio mjncham mjojmko mkfjdko mkfkdko mkfldko mkgjijo mkohdhf
mkolmlo mlejole mlfjojd mlfjokd mlfjold mlgliko mpepeqo mpfpdqo
mqadcqo mqaecqo mqafcqo mqerero mqfrdro oamjocm oamkocm oamlocm
ochanlo ogdgfim ogdhfim ogdifim oglhjgm ogmjoim ogmkoim ogmloim
ohdgfgm ohlgjhm ohlhjhm ohlijhm oidifhm oilhjim ojdlmjf ojflmjd
ojflmkd ojflmld ojgjilm ojgkilm ojglilm okmjojm olmlokm paecqjp
pcrjpar pcrkpar pcrlpar pdidger pdjeldr peifgfr pejdler pejeler
pejfler pfidgdr pfiegdr pfifgdr pfjelfr pfrjpdr pfrkpdr pfrlpdr
pjrjpkr pkrlplr plfjdjr plfkdjr plfldjr plgjrji plgjrki plgjrli
plijrlg rbpjrbp rbpkrbp rbplrbp rfpjrdp rfpkrdp rfplrdp rjfjdkp
rjglpji rjglpki rjglpli rjhlpjh rkfldlp rkgjikp rkgkikp rkglikp
rkpeieg rkpjrjp rlplrkp rlqaecr rncganp rnchanp rncianp rngmimp
rnhmhmp rogoinp rohohnp
`;

const FIRST_LETTER = "a".charCodeAt(0);

function sequencesIn(words: string): readonly FaceTurnSequence[] {
  return words
    .trim()
    .split(/\s+/)
    .map((word) =>
      Array.from(word, (letter) => letter.charCodeAt(0) - FIRST_LETTER),
    );
}

/** The sequences of up to ten turns that keep the first two layers, shortest first. */
export function sequencesKeepingTwoLayers(): readonly FaceTurnSequence[] {
  return sequencesIn(KEEPING_TWO_LAYERS);
}

/** The sequences of up to seven turns that keep the first two layers but for what belongs into slot 0, shortest first. */
export function sequencesKeepingAllButSlot0(): readonly FaceTurnSequence[] {
  return sequencesIn(KEEPING_ALL_BUT_SLOT_0);
}
