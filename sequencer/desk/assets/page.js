/*! Bundles three.js, fflate, Preact and its signals, all under the MIT licence: see THIRD-PARTY.md. */
"use strict";(()=>{var te,Gd,Xu,Wi,Hu,Ba,Hd,Oa,Wd,qu,Wu,F_,eo=Symbol.for("pv"),za={},Va=[],O_=/^m(i|n|o|s|text|space)$/,$u=Array.isArray,Yu=Va.slice,vs=Object.assign;function _s(n){n&&n.parentNode&&n.remove()}function Xd(n,t,e){var i,s,r,o={},a=arguments.length;for(r in t)r=="key"?i=t[r]:r=="ref"&&typeof n!="function"?s=t[r]:o[r]=t[r];return a>2&&(o.children=a>3?Yu.call(arguments,2):e),to(n,o,i,s,null)}function to(n,t,e,i,s){var r={type:n,props:t,key:e,ref:i,__k:null,__:null,__b:0,__e:null,__c:null,constructor:eo,__v:s||++Gd,__i:-1,__u:0};return!s&&te.vnode&&te.vnode(r),r}function jt(n){return n.children}function Hs(n,t){this.props=n,this.context=t,this.__g=0}function Xi(n,t){if(t==null)return n.__&&Xi(n.__,n.__i+1);for(var e;t<n.__k.length;t++)if((e=n.__k[t])&&e.__e)return e.__e;return typeof n.type!="function"||n.props.__P?null:Xi(n)}function k_(n){var t,e=n.__v,i=e.__e,s=[],r=[],o=n.__P;o&&((t=vs({constructor:eo},e)).__v=e.__v+1,te.vnode&&te.vnode(t),Zu(o,t,e,n.__n,o.namespaceURI,32&e.__u?[i]:null,s,i||Xi(e),32&e.__u,r),t.__v=e.__v,t.__.__k[t.__i]=t,Kd(s,t,r),e.__=e.__e=null,t.__e!=i&&qd(t))}function qd(n){if((n=n.__)&&n.__c&&!n.props.__P)return n.__e=null,n.__k.some(function(t){return t&&(n.__e=t.__e)}),qd(n)}function zd(n){(8&n.__g||(n.__g|=8,Wi.push(n),Ba++))&&Hu==te.debounceRendering||((Hu=te.debounceRendering)||queueMicrotask)($d)}function $d(){try{for(var n,t=1;Wi.length;)Wi.length>t&&Wi.sort(Hd),n=Wi.shift(),t=Wi.length,8&n.__g&&k_(n)}finally{(Ba=Wi.length)&&(Hu||queueMicrotask)($d)}}function Yd(n,t,e,i,s,r,o,a,l,c,u){var h,d,f,g,v,_,m=i.__k||Va,y=t.length;for(l=B_(e,t,m,l,y),h=0;h<y;h++)(f=e.__k[h])!=null&&(d=~f.__i&&m[f.__i]||za,f.__i=h,_=Zu(n,f,d,s,r,o,a,l,c,u),g=f.__e,(d.ref!=f.ref||8&d.__u)&&(d.ref&&Ju(d.ref,null,f,d),f.ref&&u.push(f.ref,f.__c||g,f)),v=v||g,4&f.__u?(l=Zd(f,l,n,!d.__v),d.__e&&(d.__e=null)):typeof f.type=="function"&&_!==void 0?l=_:g&&(l=g.nextSibling),f.__u&=-21);return e.__e=v,l}function B_(n,t,e,i,s){var r,o,a,l,c,u,h,d,f,g=e.length,v=g,_=0,m=0,y=n.__k=Array(s);for(r=0;r<s;r++)(o=t[r])!=null&&typeof o!="boolean"&&typeof o!="function"?(typeof o!="object"||o.constructor===String?o=y[r]=to(null,o):$u(o)?o=y[r]=to(jt,{children:o}):o.constructor===eo&&o.__b?o=y[r]=to(o.type,o.props,o.key,o.ref,o.__v):y[r]=o,l=r+_,o.__=n,o.__b=n.__b+1,a=null,~(c=o.__i=z_(o,e,l,v))&&(v--,(a=e[c])&&(a.__u|=2)),a&&a.__v?(o.__u|=16,c==l-1?_--:c==l+1?_++:c!=l&&(c>l?_--:_++,m=1)):(~c||(s>g?_--:s<g&&_++),typeof o.type!="function"&&(o.__u|=4))):y[r]=null;if(m){for(u=[],h=[],r=0;r<s;r++)if((o=y[r])&&16&o.__u){for(_=0,d=u.length;_<d;)u[f=_+d>>1]<o.__i?_=f+1:d=f;u[_]=o.__i,h[r]=_+1}for(_=u.length;r--;)h[r]&&(h[r]==_?_--:y[r].__u|=4)}if(v)for(r=0;r<g;r++)!(a=e[r])||2&a.__u||(a.__e==i&&(i=Xi(a)),Ku(a,a));return i}function Zd(n,t,e,i){var s,r,o,a;if(typeof n.type=="function"){if(n.props.__P)return t;if(s=n.__k)for(r=0;r<s.length;r++)s[r]&&(s[r].__=n,t=Zd(s[r],t,e,!1));return t}for(t&&!t.parentNode&&(t=Xi(n))&&!t.parentNode&&(t=null),o=n.__e,a=t;a&&a.nodeType==8;)a=a.nextSibling;for(o!=a&&(!i&&e.moveBefore&&o.parentNode?e.moveBefore(o,t):e.insertBefore(o,t||null)),t=o;(t=t&&t.nextSibling)&&t.nodeType==8&&!t.data.startsWith("$s"););return t}function z_(n,t,e,i){var s,r=n.key,o=n.type,a=t[e],l=a&&!(2&a.__u);if(a===null&&r==null||l&&r==a.key&&o==a.type)return e;if(i>(l?1:0)){for(s=e-1;s>=0;s--)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s;for(s=e+1;s<t.length;s++)if((a=t[s])&&!(2&a.__u)&&r==a.key&&o==a.type)return s}return-1}function Vd(n,t,e){e==null&&(e=""),t[0]=="-"?n.setProperty(t,e):n[t]=e}function Fa(n,t,e,i,s){var r,o;if(t=="style")if(typeof e=="string")n.style.cssText=e;else{if(typeof i=="string"&&(n.style.cssText=i=""),i)for(t in i)e&&t in e||Vd(n.style,t);if(e)for(t in e)i&&e[t]==i[t]||Vd(n.style,t,e[t])}else if(t[0]=="o"&&t[1]=="n")typeof e!="function"&&(e=null),typeof i!="function"&&(i=null),(n.__e||(n.__e={}))[t]=e,e&&i||(o=Wu[t]||(Wu[t]=V_(t)),(n.__a||(n.__a={}))[t]=qu,r=t!=(t=t.replace(Wd,"$1")),(t=t.slice(2))[0]<"a"&&(t=t.toLowerCase()),e?n.addEventListener(t,o,r):n.removeEventListener(t,o,r));else{if(s=="http://www.w3.org/2000/svg")t=t.replace(/xlink(H|:h)/,"h").replace(/sName$/,"s");else if(t!="width"&&t!="height"&&t!="href"&&t!="list"&&t!="form"&&t!="tabIndex"&&t!="download"&&t!="rowSpan"&&t!="colSpan"&&t!="role"&&t!="popover"&&t in n)try{return void(n[t]=e??"")}catch{}if(typeof e=="function")return;e==null||e===!1&&t[4]!="-"?n.removeAttribute(t):n.setAttribute(t,t=="popover"&&e==1?"":e)}}function V_(n){return function(t){var e=this.__e;if(e){if(e=e[n],t[Oa]==null)t[Oa]=qu++;else if(t[Oa]<this.__a[n])return;return e(te.event?te.event(t):t)}}}function Zu(n,t,e,i,s,r,o,a,l,c){var u,h,d,f,g,v,_,m,y,M,b,E,A,x,T,D,R,P,F=t.type;if(t.constructor!==eo)return null;128&e.__u&&(l=32&e.__u,u=e.__c.__z)&&(t.__u|=l,h=r=[],u.nodeType==8?a=ka(u,r):r.push(u),a=r[0]||a),(u=te.__b)&&u(t);t:if(typeof F=="function"){d=o.length;try{if(m=t.props,y=(u=F.prototype)&&u.render,M=(u=F.contextType)&&i[u.__c],b=u?M?M.props.value:u.__:i,(f=e.__c)?(t.__c=f,2&f.__g&&(f.__g|=1)):(y?t.__c=f=new F(m,b):(t.__c=f=new Hs(m,b),f.constructor=F,f.render=H_),M&&M.sub(f),f.state||(f.state={}),f.__n=i,f.__g|=8,f.__h=[],f.__k=[]),y&&(f.__s||(f.__s=f.state),F.getDerivedStateFromProps&&(f.__s==f.state&&(f.__s=vs({},f.__s)),vs(f.__s,F.getDerivedStateFromProps(m,f.__s)))),g=f.props,v=f.state,f.__v=t,e.__c){if(m!==g&&y&&!F.getDerivedStateFromProps&&f.componentWillReceiveProps&&f.componentWillReceiveProps(m,b),t.__v==e.__v&&!(8&f.__g)||!(4&f.__g)&&f.shouldComponentUpdate&&f.shouldComponentUpdate(m,f.__s,b)===!1){t.__v!=e.__v&&(f.props=m,f.state=f.__s,f.__g&=-9),t.__e=e.__e,t.__k=e.__k,t.__k.some(function(B){B&&(B.__=t)}),Va.push.apply(f.__h,f.__k),f.__k=[],f.__h.length&&o.push(f),a=Xi(e);break t}f.componentWillUpdate&&f.componentWillUpdate(m,f.__s,b),y&&f.componentDidUpdate&&f.__h.push(function(){f.componentDidUpdate(g,v,_)})}else y&&!F.getDerivedStateFromProps&&f.componentWillMount&&f.componentWillMount(),y&&f.componentDidMount&&f.__h.push(f.componentDidMount);f.context=b,f.props=m,f.__P=n,f.__g&=-5,E=te.__r,A=y?25:0;do f.__g&=-9,E&&E(t),u=f.render(f.props,f.state=f.__s,f.context);while(8&f.__g&&++A<25);y&&(Va.push.apply(f.__h,f.__k),f.__k=[]),f.state=f.__s,f.getChildContext&&(i=vs({},i,f.getChildContext())),y&&e.__c&&f.getSnapshotBeforeUpdate&&(_=f.getSnapshotBeforeUpdate(g,v)),x=u&&u.type===jt&&u.key==null?u.props.children:u,m.__P&&(u=a,s=(n=m.__P).namespaceURI,l=r=null,e.props&&e.props.__P!=n&&(e.__k.some(function(B){B&&Ku(B,B)}),e.__k=null),a=e.__k?Xi(e,0):null),a=Yd(n,$u(x)?x:[x],t,e,i,s,r,o,a,l,c),m.__P&&(t.__e=null,a=u),t.__u&=-161,h&&h.some(_s),f.__h.length&&o.push(f),1&f.__g&&(f.__g&=-4)}catch(B){if(o.length=d,t.__v=null,l||r)if(B&&B.then){if(t.__u|=128|l,r){for(~(R=r.indexOf(a||void 0))||(R=r.length);(P=r[R-1])&&P.nodeType==8;)R--;for(;R<r.length;R++)if(P=r[R])if(r[R]=null,T){if(P==D)break}else{if(P.nodeType!=8)break;P.data.startsWith("$s")&&(D=ka(T=P))}}if(!T){for(;a&&a.nodeType==8&&a.nextSibling;)a=a.nextSibling;T=a}(u=ka(T=t.__c.__z||(t.__c.__z=T)))?(t.__e=T,a=u):t.__e=a,a=a&&a.nextSibling}else r&&r.some(_s);else t.__e=e.__e;t.__k||(t.__k=e.__k||[]),B&&B.then||Jd(t),te.__e(B,t,e)}}else a=t.__e=G_(e.__e,t,e,i,s,r,o,l,c,n);return(u=te.diffed)&&u(t),a}function ka(n,t){if(n&&n.nodeType==8&&n.data.startsWith("$s"))for(var e=1;n=n.nextSibling;){if(n.nodeType==8){if(n.data.startsWith("$s"))e++;else if(n.data.startsWith("/$s")&&!--e)return n}t&&t.push(n)}}function Jd(n){n&&(n.__c&&(n.__c.__g|=4),n.__k&&n.__k.some(Jd))}function Kd(n,t,e){for(var i=0;i<e.length;)Ju(e[i++],e[i++],e[i++]);te.__c&&te.__c(t,n),n.some(function(s){try{n=s.__h,s.__h=[],n.some(function(r){r.call(s)})}catch(r){te.__e(r,s.__v)}})}function G_(n,t,e,i,s,r,o,a,l,c){var u,h,d,f,g,v,_,m,y=e.props||za,M=t.props,b=t.type;if(b=="svg"?s="http://www.w3.org/2000/svg":b=="math"?s="http://www.w3.org/1998/Math/MathML":s||(s="http://www.w3.org/1999/xhtml"),r){for(u=0;u<r.length;u++)if((g=r[u])&&(b?g.localName==b:g.nodeType==3)){n=g,r[u]=null;break}}if(!n){if(m=c.ownerDocument||document,!b)return m.createTextNode(M);n=m.createElementNS(s,b,M.is?M:c),a&&(te.__m&&te.__m(t,r),a=!1),r=null}if(b){if(c=b=="template"&&n.content||n,r=b=="textarea"&&M.defaultValue!=null?null:r&&Yu.call(c.childNodes),!a&&r)for(y={},u=0;u<n.attributes.length;u++)y[(g=n.attributes[u]).name]=g.value;for(u in y)g=y[u],u=="dangerouslySetInnerHTML"?d=g:u=="children"||u in M||u=="value"&&"defaultValue"in M||u=="checked"&&"defaultChecked"in M||Fa(n,u,null,g,s);for(u in M)g=M[u],u=="children"?f=g:u=="dangerouslySetInnerHTML"?h=g:u=="value"?v=g:u=="checked"?_=g:a&&typeof g!="function"||y[u]===g||Fa(n,u,g,y[u],s);h?(a||d&&(h.__html==d.__html||h.__html==n.innerHTML)||(n.innerHTML=h.__html),t.__k=[]):(d&&(n.textContent=""),(b=="foreignObject"||s=="http://www.w3.org/1998/Math/MathML"&&O_.test(b))&&(s="http://www.w3.org/1999/xhtml"),Yd(c,$u(f)?f:[f],t,e,i,s,r,o,r?r[0]:e.__k&&Xi(e,0),a,l),r&&r.some(_s)),a&&b!="textarea"||(u="value",b=="progress"&&v==null?n.removeAttribute(u):v==null||v===n[u]&&(b!="progress"||v)||Fa(n,u,v,y[u],s),u="checked",_!=null&&_!=n[u]&&Fa(n,u,_,y[u],s))}else y===M||a&&n.data==M||(n.data=M);return n}function Ju(n,t,e,i){try{typeof n=="function"?t?t.__x=n(t)||1:i&&(i=i.__c||i.__e)&&(t=i.__x)&&(i.__x=null,typeof t=="function"?t():n(null)):n.current=t}catch(s){te.__e(s,e)}}function Ku(n,t,e){var i,s,r,o;if(te.unmount&&te.unmount(n),!(i=n.ref)||i.current&&i.current!=n.__e||Ju(i,null,t,n),i=n.__c){if(i.componentWillUnmount)try{i.componentWillUnmount()}catch(a){te.__e(a,t)}i.__P=i.__n=null}if(i=n.__k)for(o=0;o<i.length;o++)i[o]&&Ku(i[o],t,typeof n.type!="function"||e&&!n.props.__P);!e&&(i=n.__c)&&(i=i.__z)&&(s=ka(i,r=[]))&&(i==n.__e&&r.some(_s),_s(s),_s(i)),e||_s(n.__e),n.__e=n.__c=n.__=null}function H_(n,t,e){return this.constructor(n,e)}function jd(n,t){var e,i,s,r;te.__&&te.__(n,t),t.nodeType==9&&(t=t.documentElement),i=(e=n&&32&n.__u)?null:t.__k,t.__k=to(jt,{children:[n]}),s=[],r=[],Zu(t,t.__k,i||za,za,t.namespaceURI,i?null:t.firstChild?Yu.call(t.childNodes):null,s,i?i.__e:t.firstChild,e,r),Kd(s,t.__k,r),t.__k.props.children=null}te={__e:function(n,t,e,i){for(var s,r,o;t=t.__;)if((s=t.__c)&&!(1&s.__g)){s.__g|=4;try{if((o=(r=s.constructor)&&r.getDerivedStateFromError)&&s.setState(r.getDerivedStateFromError(n)),s.componentDidCatch&&(s.componentDidCatch(n,i||{}),o=1),o&&8&s.__g)return void(s.__g|=2)}catch(a){n=a}}throw Ba=0,n}},Gd=0,Xu=function(n){return n!=null&&n.constructor===eo},Hs.prototype.setState=function(n,t){var e=this.__s;e&&e!=this.state||(e=this.__s=vs({},this.state)),typeof n=="function"&&(n=n(vs({},e),this.props)),n&&(vs(e,n),this.__v&&(t&&this.__k.push(t),zd(this)))},Hs.prototype.forceUpdate=function(n){this.__v&&(this.__g|=4,n&&this.__h.push(n),zd(this))},Hs.prototype.render=jt,Wi=[],Ba=0,Hd=function(n,t){return n.__v.__b-t.__v.__b},Oa=Symbol(),Wd=/(PointerCapture)$|Capture$/i,qu=0,Wu={},F_=0;var Ie=class extends Error{constructor(e,i,s,r=!1){super(s);this.status=e;this.trouble=i;this.anyway=r}status;trouble;anyway},ju="secret",Ws={"X-Sequencer-Secret":""};async function Qd(){let n=location.hash.slice(1);if(n&&history.replaceState(null,"",location.pathname),n.startsWith("ticket=")){let t=await fetch("/enter",{method:"POST",headers:{"content-type":"application/json"},body:JSON.stringify({ticket:n.slice(7)})});t.ok&&sessionStorage.setItem(ju,(await t.json()).secret)}else n&&sessionStorage.setItem(ju,n);Ws["X-Sequencer-Secret"]=sessionStorage.getItem(ju)||""}async function no(n){let t=await n.text(),e=null;try{e=JSON.parse(t)}catch{}if(n.ok)return e;let i=e?.error??null,s=i?.message??`The server answered with ${n.status}.`;throw new Ie(n.status,i,s,!!e?.error?.anyway)}async function me(n){return no(await fetch(`/api/${n}`,{headers:Ws}))}async function Ce(n,t){return no(await fetch(`/api/${n}`,{method:"POST",headers:{...Ws,"content-type":"application/json"},body:JSON.stringify(t)}))}async function tp(n){return no(await fetch(`/api/song-file?name=${encodeURIComponent(n.name)}`,{method:"POST",headers:Ws,body:n}))}async function ep(n){let t=await fetch(`/api/${n}`,{headers:Ws});return t.ok||await no(t),t.arrayBuffer()}async function np(n){let t=await fetch("/api/events",{headers:Ws});if(!t.ok||!t.body)return no(t);let e=t.body.pipeThrough(new TextDecoderStream).getReader(),i="";for(;;){let{done:s,value:r}=await e.read();if(s)return;i+=r;let o=i.split(`

`);i=o.pop();for(let a of o){let l="message",c="";for(let u of a.split(`
`))u.startsWith("event:")?l=u.slice(6).trim():u.startsWith("data:")&&(c+=u.slice(5).trim());c&&n(l,JSON.parse(c))}}}var so,ze,Qu,ip,th=Object.is,Ga=0,fp=[],eh=[],Ue=te,sp=Ue.__b,rp=Ue.__r,op=Ue.diffed,ap=Ue.__c,lp=Ue.unmount,cp=Ue.__;function ih(n,t){Ue.__h&&Ue.__h(ze,n,Ga||t),Ga=0;var e=ze.__H||(ze.__H={__:[],__h:[]});return n>=e.__.length&&e.__.push({}),e.__[n]}function At(n){return Ga=1,W_(pp,n)}function W_(n,t,e){var i=ih(so++,2);if(i.t=n,!i.__c&&(i.__=[e?e(t):pp(void 0,t),function(r){var o=(i.__N||i.__)[0],a=i.t(o,r);th(o,a)||(i.__N=[a,i.__[1]],i.__c.setState({}))}],i.__c=ze,!ze.__f)){ze.__f=!0;var s=ze.shouldComponentUpdate;ze.shouldComponentUpdate=function(r,o,a){var l=this.__H;if(!l)return!0;var c=!1,u=this.props!=r;if(l.__.some(function(d){d.__N&&(c=!0,th(d.__[0],d.__N[0])||(u=!0))}),s){var h=s.call(this,r,o,a);return c?h||u:h}return!c||u}}return i.__}function ae(n,t){var e=ih(so++,3);!Ue.__s&&dp(e.__H,t)&&(e.__P=!0,e.__=n,e.u=t,ze.__H.__h.push(e))}function be(n){return Ga=5,Ha(function(){return{current:n}},[])}function Ha(n,t){var e=ih(so++,7);return dp(e.__H,t)&&(e.__=n(),e.__H=t),e.__}function X_(){var n;do{for(;n=eh.shift();)try{io(n)}catch(e){Ue.__e(e,{__:(n=n.__P)&&n.__v})}for(;n=fp.shift();){var t=n.__H;if(n.__P&&t)try{t.__h.some(io),t.__h.some(nh),t.__h=[]}catch(e){t.__h=[],Ue.__e(e,n.__v)}}}while(eh.length)}Ue.__b=function(n){ze=null,sp&&sp(n)},Ue.__=function(n,t){n&&t.__k&&t.__k.__m&&(n.__m=t.__k.__m),cp&&cp(n,t)},Ue.__r=function(n){rp&&rp(n),so=0;var t=(ze=n.__c).__H;t&&(Qu==ze?ze.__h=[]:(t.__h.some(io),t.__h.some(nh),so=0),t.__h=[],t.__.some(function(e){e.__N&&(e.__=e.__N),e.u=e.__N=void 0})),Qu=ze},Ue.diffed=function(n){op&&op(n);var t=n.__c;t&&t.__H&&(t.__H.__h.length&&hp(fp.push(t)),t.__H.__.some(function(e){e.u&&(e.__H=e.u)})),Qu=ze=null},Ue.__c=function(n,t){t.some(function(e){try{e.__h.some(io),e.__h=e.__h.filter(function(i){return!i.__||nh(i)})}catch(i){e.__h=[function(){throw i}]}}),ap&&ap(n,t)},Ue.unmount=function(n){lp&&lp(n);var t,e,i=n.__c;i&&i.__H&&(i.__H.__.some(function(s){try{if(s.__P&&s.__c){if(e===void 0){for(e=n.__;e&&(!e.__c||!e.__c.__P);)e=e.__;e=e&&e.__c}s.__P=e,hp(eh.push(s))}else io(s)}catch(r){t=r}}),i.__H=void 0,t&&Ue.__e(t,i.__v))};var up=typeof requestAnimationFrame=="function";function q_(n){var t,e=function(){clearTimeout(i),up&&cancelAnimationFrame(t),setTimeout(n)},i=setTimeout(e,35);up&&(t=requestAnimationFrame(e))}function hp(n){n!=1&&ip==Ue.requestAnimationFrame||((ip=Ue.requestAnimationFrame)||q_)(X_)}function io(n){var t=ze,e=n.__c;typeof e=="function"&&(n.__c=void 0,e()),ze=t}function nh(n){var t=ze;n.__c=n.__(),ze=t}function dp(n,t){return!n||n.length!=t.length||t.some(function(e,i){return!th(e,n[i])})}function pp(n,t){return typeof t=="function"?t(n):t}var $_=Symbol.for("preact-signals");function $a(){if(yi>1)yi--;else{var n,t=!1;for((function(){var s=Xa;for(Xa=void 0;s!==void 0;){var r=s.S;if(r.v===s.v)for(var o=r.t;o!==void 0;o=o.x)o.i===s.i&&(o.i=r.i);s=s.o}})();oo!==void 0;){var e=oo;for(oo=void 0,Wa++;e!==void 0;){var i=e.u;if(e.u=void 0,e.f&=-3,!(8&e.f)&&gp(e))try{e.c()}catch(s){t||(n=s,t=!0)}e=i}}if(Wa=0,yi--,t)throw n}}function rh(n){if(yi>0)return n();sh=++Y_,yi++;try{return n()}finally{$a()}}var ro,Me=void 0;function ao(n){var t=Me,e=ro;Me=void 0,ro=void 0;try{return n()}finally{Me=t,ro=e}}var oo=void 0,yi=0,Wa=0,Y_=0,sh=0,Xa=void 0,qa=0;function mp(n){if(Me!==void 0){var t=n.n;if(t===void 0||t.t!==Me)return t={i:0,S:n,p:Me.s,n:void 0,t:Me,e:void 0,x:void 0,r:t},Me.s!==void 0&&(Me.s.n=t),Me.s=t,n.n=t,32&Me.f&&n.S(t),t;if(t.i===-1)return t.i=0,t.n!==void 0&&(t.n.p=t.p,t.p!==void 0&&(t.p.n=t.n),t.p=Me.s,t.n=void 0,Me.s.n=t,Me.s=t),t}}function Ve(n,t){this.v=n,this.i=0,this.n=void 0,this.t=void 0,this.l=0,this.W=t?.watched,this.Z=t?.unwatched,this.name=t?.name}Ve.prototype.brand=$_;Ve.prototype.h=function(){return!0};Ve.prototype.S=function(n){var t=this,e=this.t;e!==n&&n.e===void 0&&(n.x=e,this.t=n,e!==void 0?e.e=n:ao(function(){var i;(i=t.W)==null||i.call(t)}))};Ve.prototype.U=function(n){var t=this;if(this.t!==void 0){var e=n.e,i=n.x;e!==void 0&&(e.x=i,n.e=void 0),i!==void 0&&(i.e=e,n.x=void 0),n===this.t&&(this.t=i,i===void 0&&ao(function(){var s;(s=t.Z)==null||s.call(t)}))}};Ve.prototype.subscribe=function(n){var t=this;return dn(function(){var e=t.value;ao(function(){return n(e)})},{name:"sub"})};Ve.prototype.valueOf=function(){return this.value};Ve.prototype.toString=function(){return this.value+""};Ve.prototype.toJSON=function(){return this.value};Ve.prototype.peek=function(){var n=this;return ao(function(){return n.value})};Object.defineProperty(Ve.prototype,"value",{get:function(){var n=mp(this);return n!==void 0&&(n.i=this.i),this.v},set:function(n){if(n!==this.v){if(Wa>100)throw new Error("Cycle detected");(function(e){yi!==0&&Wa===0&&e.l!==sh&&(e.l=sh,Xa={S:e,v:e.v,i:e.i,o:Xa})})(this),this.v=n,this.i++,qa++,yi++;try{for(var t=this.t;t!==void 0;t=t.x)t.t.N()}finally{$a()}}}});function Ut(n,t){return new Ve(n,t)}function gp(n){for(var t=n.s;t!==void 0;t=t.n)if(t.S.i!==t.i||!t.S.h()||t.S.i!==t.i)return!0;return!1}function _p(n){for(var t=n.s;t!==void 0;t=t.n){var e=t.S.n;if(e!==void 0&&(t.r=e),t.S.n=t,t.i=-1,t.n===void 0){n.s=t;break}}}function vp(n){for(var t=n.s,e=void 0;t!==void 0;){var i=t.p;t.i===-1?(t.S.U(t),i!==void 0&&(i.n=t.n),t.n!==void 0&&(t.n.p=i)):e=t,t.S.n=t.r,t.r!==void 0&&(t.r=void 0),t=i}n.s=e}function ys(n,t){Ve.call(this,void 0,t),this.x=n,this.s=void 0,this.g=qa-1,this.f=4}ys.prototype=new Ve;ys.prototype.h=function(){if(this.f&=-3,1&this.f)return!1;if((36&this.f)==32||(this.f&=-5,this.g===qa))return!0;if(this.g=qa,this.f|=1,this.i>0&&!gp(this))return this.f&=-2,!0;var n=Me;try{_p(this),Me=this;var t=this.x();(16&this.f||this.v!==t||this.i===0)&&(this.v=t,this.f&=-17,this.i++)}catch(e){this.v=e,this.f|=16,this.i++}return Me=n,vp(this),this.f&=-2,!0};ys.prototype.S=function(n){if(this.t===void 0){this.f|=36;for(var t=this.s;t!==void 0;t=t.n)t.S.S(t)}Ve.prototype.S.call(this,n)};ys.prototype.U=function(n){if(this.t!==void 0&&(Ve.prototype.U.call(this,n),this.t===void 0)){this.f&=-33;for(var t=this.s;t!==void 0;t=t.n)t.S.U(t)}};ys.prototype.N=function(){if(!(2&this.f)){this.f|=6;for(var n=this.t;n!==void 0;n=n.x)n.t.N()}};Object.defineProperty(ys.prototype,"value",{get:function(){if(1&this.f)throw new Error("Cycle detected");var n=mp(this);if(this.h(),n!==void 0&&(n.i=this.i),16&this.f)throw this.v;return this.v}});function sn(n,t){return new ys(n,t)}function yp(n){var t=n.j;if(n.j=void 0,typeof t=="function"){yi++;var e=Me;Me=void 0;try{t()}catch(i){throw n.f&=-2,n.f|=8,oh(n),i}finally{Me=e,$a()}}}function oh(n){for(var t=n.s;t!==void 0;t=t.n)t.S.U(t);n.x=void 0,n.s=void 0,yp(n)}function Z_(n){if(Me!==this)throw new Error("Out-of-order effect");vp(this),Me=n,this.f&=-2;try{8&this.f&&oh(this)}finally{$a()}}function Xs(n,t){this.x=n,this.j=void 0,this.s=void 0,this.u=void 0,this.f=32,this.name=t?.name,ro&&ro.push(this)}Xs.prototype.c=function(){var n=this.S();try{if(8&this.f||this.x===void 0)return;var t=this.x();typeof t=="function"&&(this.j=t)}finally{n()}};Xs.prototype.S=function(){if(1&this.f)throw new Error("Cycle detected");this.f|=1,this.f&=-9,yp(this),_p(this),yi++;var n=Me;return Me=this,Z_.bind(this,n)};Xs.prototype.N=function(){2&this.f||(this.f|=2,this.u=oo,oo=this)};Xs.prototype.d=function(){this.f|=8,1&this.f||oh(this)};Xs.prototype.dispose=function(){this.d()};function dn(n,t){var e=new Xs(n,t);try{e.c()}catch(s){throw e.d(),s}var i=e.d.bind(e);return i[Symbol.dispose]=i,i}var xp,Za,Ya,J_=typeof window<"u"&&!!window.__PREACT_SIGNALS_DEVTOOLS__;var bp=[];dn(function(){xp=this.N})();function qs(n,t){te[n]=t.bind(null,te[n]||function(){})}function lo(n){if(Ya){var t=Ya;Ya=void 0,t()}Ya=n&&n.S()}function Mp(n){var t=this,e=n.data,i=j_(e);i.name="ReactiveDom",i.value=e;var s=Ha(function(){for(var a=t,l=t.__v;l=l.__;)if(l.__c){l.__c.__$f|=4;break}var c=sn(function(){var f=i.value.value;return f===0?0:f===!0?"":f||""}),u=sn(function(){return!Array.isArray(c.value)&&!Xu(c.value)}),h=dn(function(){if(this.N=Sp,u.value){var f=c.value;a.__v&&a.__v.__e&&a.__v.__e.nodeType===3&&(a.__v.__e.data=f)}}),d=t.__$u.d;return t.__$u.d=function(){h(),d.call(this)},[u,c]},[]),r=s[0],o=s[1];return r.value?o.peek():o.value}Mp.displayName="ReactiveTextNode";Object.defineProperties(Ve.prototype,{constructor:{configurable:!0,value:Xd(jt,null).constructor},type:{configurable:!0,value:Mp},props:{configurable:!0,get:function(){var n=this;return{data:{get value(){return n.value}}}}},__b:{configurable:!0,value:1}});qs("__b",function(n,t){if(lo(),Za=void 0,typeof t.type=="string"){var e,i=t.props;for(var s in i)if(s!=="children"){var r=i[s];r instanceof Ve&&(e||(t.__np=e={}),e[s]=r,i[s]=r.peek())}}n(t)});qs("__r",function(n,t){if(n(t),t.type!==jt){lo();var e,i=t.__c;i&&(i.__$f&=-2,(e=i.__$u)===void 0&&(i.__$u=e=(function(s,r){var o;return dn(function(){o=this},{name:r}),o.c=s,o})((function(s){return function(){var r;J_&&((r=this.y)==null||r.call(this)),s.__$f|=1,s.setState({})}})(i),typeof t.type=="function"?t.type.displayName||t.type.name:""))),Za=i,lo(e)}});qs("__e",function(n,t,e,i){lo(),Za=void 0,n(t,e,i)});qs("diffed",function(n,t){lo(),Za=void 0;var e;if(typeof t.type=="string"&&(e=t.__e)){var i=t.__np,s=t.props,r=e.U;if(r)for(var o in r){var a=r[o];a===void 0||i&&o in i||(a.d(),r[o]=void 0)}if(i){r||(r={},e.U=r);for(var l in i){var c=r[l],u=i[l];c===void 0?(c=K_(e,l,u,s),r[l]=c):c.o(u,s)}}}n(t)});function K_(n,t,e,i){var s=t in n&&n.ownerSVGElement===void 0,r=Ut(e);return{o:function(o,a){r.value=o,i=a},d:dn(function(){this.N=Sp;var o=r.value.value;i[t]!==o&&(i[t]=o,s?n[t]=o:o!=null&&(o!==!1||t[4]==="-")?n.setAttribute(t,o):n.removeAttribute(t))})}}qs("unmount",function(n,t){if(typeof t.type=="string"){var e=t.__e;if(e){var i=e.U;if(i){e.U=void 0;for(var s in i){var r=i[s];r&&r.d()}}}var o=t.__np;if(o){var a=t.props;for(var l in o)a[l]=o[l]}t.__np=void 0}else{var c=t.__c;if(c){c.__$f|=8;var u=c.__$u;u&&(c.__$u=void 0,u.d())}}n(t)});qs("__h",function(n,t,e,i){i<3&&(t.__$f|=2),n(t,e,i)});Hs.prototype.shouldComponentUpdate=function(n,t){if(this.__R)return!0;var e=this.__$u,i=e&&e.s!==void 0;for(var s in t)return!0;if(this.__f||typeof this.u=="boolean"&&this.u===!0){var r=2&this.__$f;if(!(i||r||4&this.__$f)||1&this.__$f)return!0}else if(!(i||4&this.__$f)||3&this.__$f)return!0;for(var o in n)if(o!=="__source"&&n[o]!==this.props[o])return!0;for(var a in this.props)if(!(a in n))return!0;return!1};function j_(n,t){return Ha(function(){return Ut(n,t)},[])}var Q_=function(n){queueMicrotask(function(){queueMicrotask(n)})};function tv(){rh(function(){for(var n;n=bp.shift();)xp.call(n)})}function Sp(){bp.push(this)===1&&(te.requestAnimationFrame||Q_)(tv)}function wp(n,t,e,i){let s=[],r=Math.min(1,n.position(e+1e-6).bar);for(;n.barStart(r)<i-1e-6;){let o=n.barStart(r),l=t.some(u=>Math.abs(u.start_beat-n.barStart(r+1))<.5)?r+1:r+2,c=ev(t,o+.5);s.push({section:c,heads:c!==null&&c!==s[s.length-1]?.section,start:o,beats:n.barStart(l)-o,bar:r}),r=l}return s}function ev(n,t){return n.find(e=>t>=e.start_beat&&t<e.end_beat)??null}function ah(n,t,e){let i=new Map;for(let s of t){let r=(e.get(s)??[]).filter(l=>l.end>n.start+1e-6&&l.start<n.start+n.beats-1e-6),o=r.map(l=>[l.kind,l.title,l.start.toFixed(4),l.end.toFixed(4),l.path?.join("/"),l.entry?.join("/")].join("|")).join(";"),a=i.get(o);a?a.who.push(s):i.set(o,{who:[s],blocks:r})}return[...i.values()]}function lh(n,t){let e=n.filter(i=>i.start<=t+1e-6&&i.end>t+1e-6);return e.find(i=>i.path!==null&&i.kind!=="link")??e[0]??null}function $s(n,t){return n.length===t.length&&n.length>1?"everybody":n.length>1?`${n.slice(0,-1).join(", ")} and ${n[n.length-1]}`:n[0]??"nobody"}function xn(n,t){let{bar:e,beat:i}=n.position(t+1e-6),s=Math.floor(i),r=Math.round((i-s)*1e3)/1e3;return r<.001?`${e}.${s}`:`${e}.${s}+${r}`}function Tp(n,t){let e=/^(-?\d+)\.(\d+)(?:\+(\d+)\/(\d+)|\+(\d*\.?\d+))?$/.exec(t.trim());if(!e)return null;let[,i,s,r,o,a]=e;return n.barStart(Number(i))+Number(s)-1+(r?Number(r)/Number(o):Number(a??0))}function Ap(n){return n.flatMap((t,e)=>{let i=n[e+1];return i&&i.start>t.end+1e-6&&i.start-t.end<=nv+1e-6?[{start:t.end,end:i.start}]:[]})}var nv=4;function ch(n,t){let e=0,i=n.length;for(;e<i;){let s=e+i>>1;n[s]<=t?e=s+1:i=s}return e-1}var xi=class{constructor(t,e,i,s){this.times=t;this.first=e;this.bars=i;this.metre=s}times;first;bars;metre;beatAt(t){let e=Math.min(Math.max(ch(this.times,t),0),this.times.length-2),i=this.times[e+1]-this.times[e];return this.first+e+(t-this.times[e])/i}secondsAt(t){let e=t-this.first,i=Math.min(Math.max(Math.floor(e),0),this.times.length-2);return this.times[i]+(e-i)*(this.times[i+1]-this.times[i])}rateAt(t){let e=Math.min(Math.max(ch(this.times,t),0),this.times.length-2);return 1/(this.times[e+1]-this.times[e])}barStart(t){return t<1?(t-1)*this.metre:t<=this.bars.length?this.bars[t-1]:this.bars[this.bars.length-1]+(t-this.bars.length)*this.metre}position(t){let e;t<0?e=1+Math.floor(t/this.metre):(e=ch(this.bars,t)+1,e===this.bars.length&&(e+=Math.floor((t-this.bars[e-1])/this.metre)));let i=this.barStart(e);return{bar:e,beat:t-i+1,inBar:this.barStart(e+1)-i}}text(t){let{bar:e,beat:i}=this.position(t+1e-6);return`${e}.${Math.floor(i)}`}};var yt=Ut(null),Pt=Ut(null),qi=Ut(null),Yn=Ut(null),Zs=Ut(null),Js=Ut([]),Zn=Ut(null),Ys=Ut([]),oi=Ut(null),Fe=Ut(null),Bn=Ut(!1),Ja=Ut(!1),Ks=Ut(!1),js=Ut(null),De=Ut(""),Ge=Ut(null),xs=Ut(null),co=Ut(!1),Jn=Ut(!1),uo=Ut(null),pn=Ut(0),bi=Ut(!1),le=Ut("findings"),ho=Ut(null),Se=sn(()=>Pt.value?.cast.map(n=>n.name)??[]),fe=sn(()=>{let n=Pt.value?.tempo;return n?new xi(n.times,n.first,n.bars,n.metre):null}),Ka=sn(()=>Pt.value!==null&&Pt.value.revision===yt.value?.revision),Qs=sn(()=>{let n=new Map;for(let t of Pt.value?.blocks??[]){let e=n.get(t.who);e?e.push(t):n.set(t.who,[t])}return n});function tr(n){Fe.value=n,Ge.value=null}var Ep=null;function Cp(n){Ep=n}function fo(n){pn.value=n,Ep?.(n)}var iv=0;function bs(n,t=!1){let e=++iv;Ys.value=[...Ys.value.slice(-3),{id:e,words:n,warn:t}],setTimeout(()=>Ys.value=Ys.value.filter(i=>i.id!==e),t?3e4:1e4)}async function zn(n,t,e){co.value=!0,Ge.value=null;try{return er(await n()),t&&(De.value=t),!0}catch(i){let s=i instanceof Ie||!(i instanceof TypeError)?String(i.message??i):"The program behind this page does not answer.";return Ge.value={words:s,anyway:i instanceof Ie&&i.anyway&&e?e:null},De.value=s,i instanceof Ie&&i.status===409&&er(await me("show")),!1}finally{co.value=!1}}function er(n){yt.value&&n.revision<yt.value.revision||(n.recovered&&n.recovered!==yt.value?.recovered&&bs(n.recovered),yt.value=n)}function qt(n,t,e=yt.value.revision,i=!1){let s=Array.isArray(n)?{operations:n}:{operation:n};return zn(()=>Ce("operations",{revision:e,...s,anyway:i}),t,()=>{qt(n,t,e,!0)})}var Qa=()=>yt.value?.undo&&zn(()=>Ce("undo",{}),`Undone: ${yt.value?.undo}.`),po=()=>yt.value?.redo&&zn(()=>Ce("redo",{}),`Done again: ${yt.value?.redo}.`),tl=()=>zn(()=>Ce("save",{}),"Saved."),uh=0;async function hh(){let n=++uh;try{let t=await me("view");if(n!==uh)return;Pt.value=t,Zn.value=null}catch(t){n===uh&&t instanceof Ie&&t.status===422&&(Zn.value=t.message)}}async function fh(){let n=await me("findings"),t=n.findings??[];Yn.value={...n,open:n.open??[],drawn:n.drawn??[],findings:t,entries:n.complete&&n.entries?n.entries:sv(t),unseen:n.unseen??[],cautions:n.cautions??[]}}function sv(n){let t={stop:0,warn:1,note:2},e=new Map;n.forEach((i,s)=>{let r=JSON.stringify([i.code,i.severity,i.message,i.remedies]),o=e.get(r);o?o.of.push(s):e.set(r,{severity:i.severity,start:i.start,position:i.when??i.position,message:i.message,remedies:i.remedies,of:[s]})});for(let i of e.values())i.of.length>1&&(i.message+=` (${i.of.length} times)`);return[...e.values()].sort((i,s)=>t[i.severity]-t[s.severity]||(i.start??0)-(s.start??0))}async function el(){try{let n=await me("song");n.hearing!==void 0?setTimeout(()=>{el()},1e3):qi.value=n}catch(n){if(n instanceof Ie&&n.status===409)return;bs(n instanceof Error?n.message:String(n),!0)}}async function ja(){er(await me("show"))}function Rp(n,t){n==="show"?(t.words&&t.revision>(yt.value?.revision??0)&&(De.value=t.words),!yt.value||t.revision>yt.value.revision?ja():yt.value={...yt.value,...t,text:yt.value.text,values:yt.value.values}):n==="staged"?t.error?Zn.value=t.error.message:(hh(),qi.value||el()):n==="checks"?Zs.value=t:n==="findings"?fh():n==="share"?uo.value=t:n==="outside"?ja():n==="notice"&&bs(t.message,t.severity==="warn")}function nl(n){let t=new Map;for(let e of n){let i=e.entry??e.path;if(!i||i[0]!=="timeline")continue;let s=i.join("/"),r=t.get(s);(!r||e.start<r.start)&&t.set(s,{path:i,start:e.start})}return[...t.values()].sort((e,i)=>e.start-i.start)}async function mo(n){let t=nl(n);if(!t.length)return Ge.value={words:"Nothing is written here that could be copied.",anyway:null},!1;let e=await Ce("copied",{revision:yt.value.revision,at:t.map(i=>i.path)});return js.value={blocks:e.blocks,starts:t.map(i=>i.start-t[0].start),words:n[0].title},De.value=`Copied: ${n[0].title}.`,!0}async function il(n){let t=nl(n);await mo(n)&&await qt(dh(t.map(e=>e.path)),`Cut: ${n[0].title}.`)}function dh(n){let t=yt.value?.values?.timeline??[],e=new Set(n.map(r=>Number(r[1]))),i=new Set,s=[];return t.forEach((r,o)=>{let a=rv(r);if(e.has(o))a.forEach(l=>i.add(l));else if(a.some(l=>i.has(l))){let l="from"in r||"accent"in r?null:ov(o);l!==null&&s.push({do:"change-block",at:["timeline",o],values:{from:l}}),a.forEach(c=>i.delete(c))}}),[...s,{do:"delete-blocks",at:n}]}function rv(n){return n.who===void 0||n.who==="all"?Se.value:[n.who].flat()}function ov(n){let e=(Pt.value?.blocks??[]).filter(i=>i.entry?.[0]==="timeline"&&i.entry[1]===n).reduce((i,s)=>i===null||s.start<i.start?s:i,null);return e&&fe.value?xn(fe.value,e.start):null}async function sl(n,t){let e=Fe.value,i=js.value;if(!e||!i)return;let s=i.starts.map(r=>n(e.beat+r));await qt({do:"paste-blocks",into:["timeline"],blocks:i.blocks,starts:s,before:t(e.beat)},`Pasted: ${i.words}.`)}var Ms=Ut(null),nr=Ut(null),av={done:"is ready",failed:"could not be made",stopped:"was stopped"};async function rl(){[Ms.value,nr.value]=await Promise.all([me("draft"),me("print")])}var ph=0;dn(()=>{let n=yt.value?.revision??0;ph&&n!==ph&&(Ms.peek()?.state==="done"||nr.peek()?.state==="done")&&rl().catch(()=>{}),ph=n});function Pp(n){let t=n.kind==="draft"?Ms:nr;if(n.state==="working"&&t.value&&t.value.state==="working"){t.value={...t.value,...n};return}let e=t.value?.state;rl().then(()=>{let i=av[n.state];e==="working"&&i&&(De.value=`${n.kind==="draft"?"The draft":"What you asked for"} ${i}.`)},()=>{})}async function mn(n,t={}){Ge.value=null;try{let e=await Ce(n,t);return n.startsWith("draft")?Ms.value=e:n.startsWith("begin")||(nr.value=e),!0}catch(e){let i=e instanceof Ie||!(e instanceof TypeError)?e.message:"The program behind this page does not answer.";return Ge.value={words:i,anyway:null},De.value=i,!1}}function Ip(n){return n<60?`${Math.round(n)} s`:`${Math.floor(n/60)} min ${Math.round(n%60)} s`}var lv=Symbol.for("pv"),cv=0;function p(n,t,e,i,s,r){t||(t={});var o,a,l=t;if("ref"in l&&typeof n!="function")for(a in l={},t)a=="ref"?o=t[a]:l[a]=t[a];var c={type:n,props:l,key:e,ref:o,__k:null,__:null,__b:0,__e:null,__c:null,constructor:lv,__v:--cv,__i:-1,__u:0};return(s||r)&&(c.__source=s,c.__self=r),te.vnode&&te.vnode(c),c}var uv=6,ir=Ut(!1);function Dp(){let n=Ms.value,t=be(null);return ae(()=>{ir.value&&n?.state!=="working"&&(ir.value=!1,t.current?.querySelector("h3")?.focus())},[n?.state]),yt.value?.readable?p("div",{ref:t,class:"drafting",children:n?.state==="working"?p(gv,{now:n}):n?.state==="done"&&n.offer?p(_v,{now:n}):p(hv,{now:n})}):p("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then a routine can be drafted."})}function hv({now:n}){let t=mv(),e=Fe.value?Lp(Fe.value.beat):null,i=Pt.value?.sections??[],[s,r]=At(""),[o,a]=At(0),l=c=>{ir.value=!0,mn("draft",{seed:o,...c})};return p(jt,{children:[p("h3",{tabIndex:-1,children:"A routine for this song"}),p("p",{children:"Fills what is empty with moves that everybody can dance at this tempo, and checks the whole. What you wrote yourself is left as it is. You see it first, then you decide."}),n?.state==="failed"&&p("p",{class:"fault",role:"alert",children:n.error?.message}),n?.state==="stopped"&&p("p",{class:"fault",children:sr(n.words)}),p("p",{class:"row",children:[p("button",{type:"button",class:"main",onClick:()=>l({}),children:t?"Draft anew what was drafted":"Draft what is empty"}),t&&p("button",{type:"button",onClick:()=>l({another:!0}),children:"Another routine"})]}),p("fieldset",{children:[p("legend",{children:"Only a part of the song"}),p("p",{children:[p("label",{children:["Section ",p("select",{value:s,onChange:c=>r(c.currentTarget.value),children:[p("option",{value:""}),i.map(c=>p("option",{value:c.name,children:c.name},c.name))]})]}),p("button",{type:"button",disabled:!s,onClick:()=>l({section:s}),children:"Draft this section"}),t&&p("button",{type:"button",disabled:!s,onClick:()=>l({section:s,another:!0}),children:"Another one for it"})]}),e?p("p",{children:[p("span",{children:["The empty stretch at the chosen count, ",e.from," to ",e.until]})," ",p("button",{type:"button",onClick:()=>l({span:[e.from,e.until]}),children:"Draft this stretch"})]}):p("p",{class:"quiet",children:"Or choose an empty count in the sheet: then the stretch around it can be drafted."})]}),p(fv,{}),p("p",{class:"row",children:p("label",{children:["Seed ",p("input",{type:"number",min:0,step:1,value:o,"aria-describedby":"seed-why",onInput:c=>a(Math.max(0,Math.round(Number(c.currentTarget.value)||0)))})]})}),p("p",{class:"quiet",id:"seed-why",children:"The same seed gives the same routine; another one decides otherwise where it costs little."})]})}function fv(){let n=yt.value?.values?.cast??[];return p("fieldset",{children:[p("legend",{children:"What everybody can dance"}),n.map(t=>p("p",{children:[p("label",{children:[t.name," ",p("select",{value:String(t.level??""),onChange:e=>{qt({do:"change-person",group:"cast",name:t.name,values:{level:e.currentTarget.value?Number(e.currentTarget.value):null}},`${t.name}: level ${e.currentTarget.value||"not said"}.`)},children:[p("option",{value:"",children:t.repertoire?"only what is listed":"level 3, as nothing is said"}),[1,2,3,4,5].map(e=>p("option",{value:e,children:dv[e]},e))]})]}),t.repertoire&&p("span",{class:"quiet",children:pv(t.repertoire)})]},t.name)),p("p",{class:"row",children:[p("button",{type:"button",onClick:()=>mh("Cast"),children:"Moves known, learnt, never danced"}),p("button",{type:"button",onClick:()=>mh("Wishes for drafts"),children:"Wishes"})]})]})}var dv=["","level 1: first moves","level 2: easy","level 3: middling","level 4: hard","level 5: everything"];function pv(n){return Object.entries(n).map(([t,e])=>`${t}: ${[e].flat().join(", ")}`).join("; ")}function mh(n,t=50){le.value="forms",setTimeout(()=>{let i=[...document.querySelectorAll(".forms > details > summary")].find(s=>s.textContent===n);if(!i){t>0&&le.value==="forms"&&mh(n,t-1);return}i.parentElement.open=!0,i.scrollIntoView({block:"start"}),i.focus()},60)}function mv(){return(yt.value?.values?.timeline??[]).some(t=>t&&"drafted"in t)}function Lp(n){let t=Pt.value,e=fe.value;if(!t||!e)return null;let i=t.blocks.filter(a=>a.path!==null);if(i.some(a=>a.start<n+1-1e-6&&a.end>n+1e-6))return null;let s=Math.floor(e.beatAt(t.duration)+1e-6),r=Math.ceil(Math.max(0,...i.map(a=>a.end).filter(a=>a<=n+1e-6))-1e-6),o=Math.floor(Math.min(s,...i.map(a=>a.start).filter(a=>a>n+1e-6))+1e-6);return o-r<uv?null:{from:xn(e,r),until:xn(e,o)}}function Np({beat:n}){let t=Lp(n);return t?p("button",{type:"button",onClick:()=>{le.value="draft",Bn.value=!1,ir.value=!0,mn("draft",{span:[t.from,t.until]})},children:["Draft ",t.from," to ",t.until]}):null}function Up(){if(!Pt.value||Pt.value.blocks.length||!yt.value?.readable)return null;let n=()=>{le.value="draft",ir.value=!0,mn("draft",{})};return p("div",{class:"first",children:[p("p",{children:"Nothing is danced yet. Click a count, or walk there with the arrow keys and press Enter, to put a move there; or let a routine be drafted for the whole song."}),Ms.value?.state!=="working"&&p("button",{type:"button",class:"main",onClick:n,children:"Draft a first routine"})]})}function gv({now:n}){return p(jt,{children:[p("h3",{tabIndex:-1,children:["Drafting",Fp(n)]}),p(go,{now:n}),p("p",{class:"row",children:[p("button",{type:"button",disabled:n.stopping,onClick:()=>{mn("draft/stop",{keep:!0})},children:n.stopping?"Stopping \u2026":"Stop, and show the best so far"}),p("button",{type:"button",onClick:()=>{mn("draft/stop")},children:"Give it up"})]}),p("p",{class:"quiet",children:"You can go on planning meanwhile. What you change then is put together with the draft, where both touch different places."})]})}function go({now:n}){let[t,e]=At(n.seconds);return ae(()=>{e(n.seconds);let i=setInterval(()=>e(s=>s+1),1e3);return()=>clearInterval(i)},[n.seconds]),p("p",{class:"progressing",children:[p("progress",{max:1,value:n.share,"aria-label":n.words}),p("span",{children:[Math.round(100*n.share)," %, ",Ip(t)]}),p("span",{class:"quiet",children:[n.words," \u2026"]})]})}var Fp=n=>n.asked.section?` ${n.asked.section}`:n.asked.span?` ${n.asked.span.join(" to ")}`:"",sr=n=>n?`${n[0].toUpperCase()}${n.slice(1)}${/[.!?]$/.test(n)?"":"."}`:"";function _v({now:n}){let t=n.offer,e=async()=>{await zn(()=>Ce("draft/lay",{number:n.number}),"The draft is in the show.")&&(le.value="findings")},{section:i,span:s}=n.asked,r=()=>{ir.value=!0,mn("draft",{section:i,span:s,another:!0,seed:n.asked.seed})},o=new Map;for(let a of t.rows)o.set(a.section,[...o.get(a.section)??[],a]);return p(jt,{children:[p("h3",{tabIndex:-1,children:["This could be danced",Fp(n)]}),t.words.map((a,l)=>p("p",{class:/^(NOT checked|cannot be flown|left out)/.test(a)?"caution":l?"quiet":"",children:sr(vv(a))},l)),!t.new&&p("p",{class:"caution",children:"It is what stands in the show already."}),n.older&&p("p",{class:"caution",children:"The show has been changed since this was begun. Both changes are put together where they touch different places; else you are told."}),p("p",{class:"row",children:[p("button",{type:"button",class:"main",disabled:!t.new,onClick:()=>{e()},children:"Put it into the show"}),p("button",{type:"button",onClick:r,children:"Another one"}),p("button",{type:"button",onClick:()=>{mn("draft/stop")},children:"Leave it"})]}),p("div",{class:"offered",children:[...o].map(([a,l])=>p("section",{"aria-label":a,children:[p("h4",{children:a}),p("ol",{children:l.map(c=>p("li",{children:[p("b",{children:c.position})," ",p("span",{children:c.words})]},c.position))})]},a))}),t.why.length>0&&p("details",{children:[p("summary",{children:"What it costs, and why"}),p("pre",{tabIndex:0,children:t.why.join(`
`)})]}),t.lines.length>0&&p("details",{children:[p("summary",{children:"What changes in the file"}),p("pre",{tabIndex:0,children:t.lines.map(a=>[...a.out.map(l=>`\u2212 ${l}`),...a.in.map(l=>`+ ${l}`)].join(`
`)).join(`
\u2026
`)})]})]})}function vv(n){return n.replace(": run `sequencer check` before you rely on it",": the checks look at it once it is in the show").replace(": `sequencer check --mend` mends it as far as it goes",": Findings offers mends once it is in the show")}var rr=Ut(null),yv=["","1: first moves","2: easy","3: middling","4: hard","5: everything"];async function _o(){rr.value=await me("begin")}function kp(n){if(rr.value?.state==="working"&&n.state==="working"){rr.value={...rr.value,...n};return}n.state==="done"?xv(n.number):_o().catch(()=>{})}async function xv(n){try{er(await Ce("begin/take",{number:n})),le.value="draft"}catch(t){er(await me("show")),yt.value?.text.trim()||(Ge.value={words:t.message,anyway:null})}me("patterns").then(t=>Js.value=t.patterns,()=>{})}function Bp(){let n=rr.value;ae(()=>{_o().catch(()=>{})},[]);let[t,e]=At(null),[i,s]=At(null),[r,o]=At([{name:"",stature:"1.70 m",prop:"poi",level:2}]),[a,l]=At(null),c=be(null);if(!n||!yt.value)return p("main",{class:"opening",children:p("p",{children:"Looking for songs \u2026"})});let u=i??n.track??n.songs[0]??"",h=a??[`${Math.max(8,4*r.length)} m`,"8 m"],d=(v,_)=>o(r.map((m,y)=>y===v?{...m,..._}:m)),f=()=>{o([...r,{...r[r.length-1],name:""}]),setTimeout(()=>[...c.current?.querySelectorAll("input.name")??[]].pop()?.focus())},g=async()=>{await mn("begin",{title:t??n.title,track:u,cast:r,floor:h})&&await _o()};return n.state==="working"||n.state==="done"?p(jt,{children:[p(Op,{}),p("main",{class:"beginning",children:p("div",{class:"hearing",children:[p("h2",{children:"Hearing the song"}),p("p",{children:"Beats, bars and sections are found. That takes a while, once for each song."}),p(go,{now:n}),p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{mn("begin/stop").then(_o)},children:"Give it up"})})]})})]}):p(jt,{children:[p(Op,{}),p("main",{class:"beginning",children:p("form",{onSubmit:v=>{v.preventDefault(),g()},children:[p("p",{children:"Say which song it is and who dances. All of this can be changed later."}),n.state==="failed"&&p("p",{class:"fault",role:"alert",children:sr(n.error?.message??"")}),p("p",{class:"field",children:[p("label",{for:"new-title",children:"Title"}),p("input",{id:"new-title",type:"text",value:t??n.title,onInput:v=>e(v.currentTarget.value)})]}),p(zp,{songs:n.songs,value:u,choose:s}),p("fieldset",{ref:c,class:"dancers",children:[p("legend",{children:"Who dances"}),r.map((v,_)=>p("div",{class:"dancer",role:"group","aria-label":v.name||`Performer ${_+1}`,children:[p("label",{children:["Name ",p("input",{class:"name",type:"text",required:!0,value:v.name,onInput:m=>d(_,{name:m.currentTarget.value})})]}),p("label",{children:["Body height ",p("input",{type:"text",required:!0,value:v.stature,size:7,onInput:m=>d(_,{stature:m.currentTarget.value})})]}),p("label",{children:["Prop ",p("select",{value:v.prop,onChange:m=>d(_,{prop:m.currentTarget.value}),children:n.props.map(m=>p("option",{value:m,children:m},m))})]}),p("label",{children:["Level ",p("select",{value:String(v.level),onChange:m=>d(_,{level:Number(m.currentTarget.value)}),children:[1,2,3,4,5].map(m=>p("option",{value:m,children:yv[m]},m))})]}),r.length>1&&p("button",{type:"button","aria-label":`Take out ${v.name||`performer ${_+1}`}`,onClick:()=>o(r.filter((m,y)=>y!==_)),children:"Take out"})]},_)),p("p",{class:"row",children:p("button",{type:"button",onClick:f,children:"Add somebody"})}),p("p",{class:"quiet",children:"Heights as you say them: 1.70 m, 170 cm or 5 ft 7 in. The level says which moves a draft may use."})]}),p("fieldset",{children:[p("legend",{children:"The floor"}),p("label",{children:["Width ",p("input",{type:"text",size:6,value:h[0],onInput:v=>l([v.currentTarget.value,h[1]])})]}),p("label",{children:["Depth ",p("input",{type:"text",size:6,value:h[1],onInput:v=>l([h[0],v.currentTarget.value])})]})]}),p("p",{class:"row",children:p("button",{type:"submit",class:"main",disabled:!u.trim(),children:"Make the show"})})]})})]})}var Op=()=>p("header",{class:"top",children:[p("h1",{children:"A new show"}),p("p",{class:"file",children:["becomes ",yt.value.file," in ",yt.value.folder]})]});function zp({songs:n,value:t,choose:e}){let[i,s]=At(""),r=async o=>{if(o){s(`${o.name} is being put beside the show \u2026`);try{let{file:a}=await tp(o);e(a),s(`${a} lies beside the show now.`)}catch(a){s(a instanceof Ie||!(a instanceof TypeError)?a.message:"The program behind this page does not answer.")}}};return p("fieldset",{class:"song",children:[p("legend",{children:"The song"}),n.length>0&&p("p",{children:p("label",{children:["Beside the show ",p("select",{value:n.includes(t)?t:"",onChange:o=>o.currentTarget.value&&e(o.currentTarget.value),children:[!n.includes(t)&&p("option",{value:""}),n.map(o=>p("option",{value:o,children:o},o))]})]})}),p("p",{children:p("label",{children:["Its path ",p("input",{type:"text",value:t,placeholder:"my-song.mp3",onInput:o=>e(o.currentTarget.value)})]})}),p("p",{children:p("label",{children:["Or bring one from elsewhere ",p("input",{type:"file",accept:"audio/*,.wav,.flac,.ogg,.mp3",onChange:o=>{r(o.currentTarget.files?.[0])}})]})}),i&&p("p",{class:"quiet",role:"status",children:i})]})}function gh({cut:n=!1}){let t=rr.value,[e,i]=At(null);ae(()=>{_o().catch(()=>{})},[yt.value?.revision]);let s=yt.value?.values?.track?.file??"",r=e??s,o=(a=!1)=>zn(()=>Ce("track",{file:r,revision:yt.value.revision,anyway:a}),`${r} is the song now.`,()=>{o(!0)}).then(l=>l&&i(null));return p("form",{class:"song-file",onSubmit:a=>{a.preventDefault(),o()},children:[p(zp,{songs:t?.songs??[],value:r,choose:i}),p("p",{class:"row",children:p("button",{type:"submit",disabled:!r.trim()||r===s&&!n,children:"Take this song"})})]})}function Vp(){let n=Zs.value?.error?.code==="another-cut",t=yt.value?.track_there===!1;return!n&&!t?null:p("div",{class:"first",children:[p("p",{children:t?"The song of this show is not where the file says. Say where it is, or take another one.":"The song is not the cut that this show was made for. Put the old file back, or take the new one: then every move is on its count in the new cut."}),p(gh,{cut:n})]})}var an=Ut(null),Mi=Ut(null),al=Ut(!1),_h=sn(()=>{let n=Mi.value?.tempo;return an.value&&n?new xi(n.times,n.first,n.bars,n.metre):null}),$i=sn(()=>_h.value??fe.value),vo=sn(()=>yt.value?.values?.track?.corrections??{});function or(n){let t=an.value?.values??{};return(n in t?t[n]:vo.value[n])??null}function Si(n,t){let e={...an.value?.values,...n};for(let i of Object.keys(e))bv(e[i],vo.value[i])&&delete e[i];Gp({values:e,sections:an.value?.sections??null},t)}function ll(n,t){Gp({values:an.value?.values??{},sections:n},t)}var bv=(n,t)=>(n??null)===null?(t??null)===null:JSON.stringify(n)===JSON.stringify(t)||String(n)===String(t??"");function Gp(n,t){De.value=t,an.value=Object.keys(n.values).length||n.sections?n:null,an.value?yh():Mi.value=null}function vh(){an.value=Mi.value=null}var ol=0;async function yh(){let n=an.value,t=++ol;if(!(!n||!yt.value)){al.value=!0;try{let e=await Ce("count",{revision:yt.value.revision,operation:xh(n)});if(t!==ol||an.value!==n)return;Mi.value=e,Ge.value=null}catch(e){if(t!==ol)return;let i=e instanceof Ie?e.message:"The program behind this page does not answer.";Ge.value={words:i,anyway:null},De.value=i}finally{t===ol&&(al.value=!1)}}}function xh(n){let t={do:"correct-count",values:n.values};if(!n.sections)return t;let e=Mv(n.sections);return Object.keys(n.values).length?{do:"do-together",operations:[t,e],said:"set the count and the sections"}:e}function Mv(n){let t=bh(n.map(r=>r.name)),e=n.flatMap((r,o)=>r.was!==null&&r.was!==t[o]?[[r.was,t[o]]]:[]),i=new Set(n.map(r=>r.was)),s=(Pt.value?.sections??[]).map(r=>r.name).filter(r=>!i.has(r));return{do:"set-sections",sections:n.map(r=>[r.start,r.name]),renamed:e,gone:s}}function bh(n){let t=new Map;return n.map(e=>n.filter(i=>i===e).length===1?e:(t.set(e,(t.get(e)??0)+1),`${e} ${t.get(e)}`))}function Hp(){let n=an.value?.sections;if(n){let s=Mi.value?.sections;return s?.length===n.length?n.map((r,o)=>({...r,seconds:s[o].start})):n}let t=Pt.value?.sections??[],e=vo.value.sections??[],i=e.length===t.length&&e.every((s,r)=>s.name===t[r].label);return t.map((s,r)=>({start:i?String(e[r].from):ar(s.start),name:s.label,was:s.name,seconds:s.start}))}function ar(n){let t=$i.value;if(!t||n<=0)return Ss(Math.max(0,n));let e=Math.round(t.beatAt(n));return Math.abs(t.secondsAt(e)-n)<.02?t.text(e):Ss(n)}function Ss(n){let t=Math.round(n*1e3);return`${Math.floor(t/6e4)}:${(t%6e4/1e3).toFixed(3).padStart(6,"0").replace(/(\.\d)0+$|(\.\d\d)0$/,"$1$2")}`}var lr=class extends Error{},wi=class{constructor(t){this.duration=t}duration;silent=!0;anchor=0;started=null;rate=1;span=null;volume=1;get playing(){return this.started!==null}now(){if(this.started===null)return this.anchor;let t=this.anchor+(performance.now()-this.started)/1e3*this.rate;if(this.span&&t>=this.span[1]){let[e,i]=this.span;return this.anchor=e+(t-i)%(i-e),this.started=performance.now(),this.anchor}return t<this.duration?t:(this.anchor=this.duration,this.started=null,this.duration)}async play(){this.now()>=this.duration&&(this.anchor=0),this.started??=performance.now()}pause(){this.anchor=this.now(),this.started=null}loop(t){this.span=t}seek(t){this.anchor=Math.min(Math.max(t,0),this.duration),this.started!==null&&(this.started=performance.now())}get speed(){return this.rate}set speed(t){let e=this.now();this.rate=t,this.seek(e)}};var cl=class{constructor(t){this.tempo=t}tempo;context=null;next=-1/0;on=!1;count(t){this.tempo=t,this.next=-1/0}audio(t){try{this.context??=t.context??null,this.context??=new AudioContext({latencyHint:"interactive"}),this.context.state==="suspended"&&this.context.resume()}catch{return null}return this.context}click(t,e){let i=this.context;if(!i)return;let s=i.createOscillator(),r=i.createGain();s.type=e?"triangle":"sine",s.frequency.value=e?1760:1175,r.gain.setValueAtTime(e?.5:.32,t),r.gain.exponentialRampToValueAtTime(.001,t+.06),s.connect(r).connect(i.destination),s.start(t),s.stop(t+.08)}run(t,e){if(!this.on||!t.playing){this.next=-1/0;return}let i=this.audio(t);if(!i)return;let s=this.tempo.beatAt(e);for((this.next<s-.5||this.next>s+8)&&(this.next=Math.ceil(s));;){let r=(this.tempo.secondsAt(this.next)-e)/t.speed;if(r>.12)break;if(r>-.01){let{beat:o}=this.tempo.position(this.next+1e-6),a=t.when?0:i.outputLatency||0,l=t.when?.(this.tempo.secondsAt(this.next))??i.currentTime+r-a;this.click(Math.max(l,i.currentTime),Math.floor(o)===1)}this.next+=1}}countIn(t,e,i,s,r){let o=this.audio(t),a=this.tempo.beatAt(e),{inBar:l}=this.tempo.position(a+1e-6),c=1/(this.tempo.rateAt(e)*i);for(let u=0;u<l&&o;u++)this.click(o.currentTime+.05+u*c,u===0);return new Promise(u=>{let h=performance.now()+50,d=()=>{if(r.aborted)return u(!1);let f=Math.floor((performance.now()-h)/1e3/c);if(f>=l)return u(!0);s(Math.max(f,0)+1),requestAnimationFrame(d)};d()})}};var Mh=40,Sh=110,Wp=5,ul=class{constructor(t,e,i){this.clock=t;this.told=i;this.clicks=new cl(e)}clock;told;clicks;a=null;b=null;repeat=!1;countIn=!1;counting=null;count(t){this.clicks.count(t)}take(t){let e=this.clock;this.clock=t,t.seek(e.now()),t.speed=e.speed}async toggle(){if(this.clock.playing||this.counting)return this.stop();let{span:t}=this;if(t){let e=this.clock.now();(e<t[0]-.01||e>=t[1]-.01)&&this.clock.seek(t[0])}if(this.countIn&&!await this.counted())return this.told.changed();try{await this.clock.play()}catch(e){e instanceof lr?(this.told.notice("This browser makes no sound here. The show plays without sound."),this.take(new wi(this.clock.duration)),this.clock.play()):this.told.notice("The browser did not start the song; press Play again.")}this.told.changed()}async counted(){let t=new AbortController;this.counting=t,this.told.changed();let e=await this.clicks.countIn(this.clock,this.clock.now(),this.clock.speed,i=>this.told.counted(i),t.signal);return this.told.counted(null),this.counting=null,e}stop(){this.counting?.abort(),this.clock.pause(),this.told.changed()}get span(){return this.repeat&&this.a!==null&&this.b!==null?[this.a,this.b]:null}mark(t,e){this[t]=e,this.a!==null&&this.b!==null&&this.a>this.b&&([this.a,this.b]=[this.b,this.a]),this.a!==null&&this.b!==null&&this.b-this.a>.05&&!this.repeat&&this.turn()}lift(){this.a=this.b=null,this.repeat=!1}turn(){this.repeat=!this.repeat,this.repeat&&(this.a??=0,this.b??=this.clock.duration)}pace(t){let e=Math.min(Sh,Math.max(Mh,Math.round(t/Wp)*Wp));return this.clock.speed=e/100,e}frame(){let{clock:t,span:e}=this,i=t.playing,s=t.now();return t.loop?.(e),i&&!t.loop&&e&&s>=e[1]&&(t.seek(e[0]),s=e[0],t.playing||t.play()),this.clicks.run(t,s),s}};var hl=class{constructor(t,e,i,s){this.buffer=t;this.start=i;this.speed=s;this.hop=Math.round(.03*t.sampleRate/2),this.size=2*this.hop,this.reach=Math.round(.005*t.sampleRate),this.window=Float32Array.from({length:this.size},(r,o)=>.5-.5*Math.cos(2*Math.PI*o/this.size)),this.tail=Array.from({length:t.numberOfChannels},()=>new Float32Array(this.hop)),this.mono=e}buffer;start;speed;size;hop;reach;window;tail;frame=0;last=null;mono;next(t){let{hop:e,size:i,window:s,buffer:r,speed:o}=this,a=this.tail.map(()=>new Float32Array(t*e+e));this.tail.forEach((l,c)=>a[c].set(l));for(let l=0;l<t;l++,this.frame++){let c=this.start*r.sampleRate+(this.frame+1)*e*o,u=this.best(Math.round(c-e));for(let h=0;h<a.length;h++){let d=r.getChannelData(h),f=a[h];for(let g=0;g<i;g++){let v=u+g;v>=0&&v<d.length&&(f[l*e+g]+=s[g]*d[v])}}this.last=u}return this.tail=a.map(l=>l.slice(t*e)),a.map(l=>l.slice(0,t*e))}best(t){let{last:e,hop:i,reach:s,mono:r}=this;if(e===null)return t;let o=e+i,a=(h,d)=>{let f=0,g=1e-9;for(let v=0;v<i;v+=d){let _=r[h+v]||0;f+=_*(r[o+v]||0),g+=_*_}return f/Math.sqrt(g)},l=t,c=-1/0;for(let h=-s;h<=s;h+=6){let d=a(t+h,6);d>c&&(c=d,l=t+h)}let u=l;c=-1/0;for(let h=Math.max(u-5,t-s);h<=Math.min(u+5,t+s);h++){let d=a(h,3);d>c&&(c=d,l=h)}return l}};var Sv=1.6,wv=.4,Tv=1105/44100,Av=.004,Ev=3e3,Cv=.04,fl=class{constructor(t,e,i){this.duration=e;this.context=new AudioContext({latencyHint:"interactive"}),this.output=this.context.createGain(),this.output.connect(this.context.destination),this.ready=this.context.decodeAudioData(t).then(s=>{this.buffer=s,this.skip=s.duration-e>.02?Tv:0,this.mono=new Float32Array(s.length);for(let r=0;r<s.numberOfChannels;r++){let o=s.getChannelData(r);for(let a=0;a<o.length;a++)this.mono[a]+=o[a]}},()=>i("This browser cannot read the song."))}duration;silent=!1;context;output;buffer=null;mono=new Float32Array(0);skip=0;ready;rate=1;rest=0;on=!1;pieces=[];nodes=[];stretcher=null;timer=0;span=null;shown=0;stamp=0;get playing(){return this.on}heard(){return this.stamped()??this.context.currentTime-(this.context.outputLatency||this.context.baseLatency||0)}stamped(){let{context:t}=this,e=t.getOutputTimestamp?.();if(!e?.contextTime||!e.performanceTime)return null;let i=e.contextTime+(performance.now()-e.performanceTime)/1e3;return i<=t.currentTime+.01&&i>t.currentTime-.6?i:null}at(t){return this.on?this.songAt(this.heard()-Math.max(0,performance.now()-t)/1e3):this.rest}latency(){let t=this.stamped();return t!==null?Math.max(0,this.context.currentTime-t):this.context.outputLatency||null}songAt(t){let{pieces:e}=this,i=e.length-1;for(;i>0&&e[i].at>t;)i--;let s=e[i];return s?Math.min(s.to,s.from+Math.max(0,t-s.at)*this.rate):this.rest}now(){if(!this.on)return this.rest;let t=this.songAt(this.heard()),e=performance.now(),i=this.shown+(e-this.stamp)/1e3*this.rate,s=t-i,r=Av*this.rate;return this.shown=Math.abs(s)>.03?t:Math.min(t+r,Math.max(t-r,i+.2*s)),this.stamp=e,t>=this.duration-.001&&!this.span&&(this.pause(),this.rest=this.duration),Math.max(0,this.shown)}when(t){for(let e of this.pieces)if(e.from<=t&&t<e.to){let i=e.at+(t-e.from)/this.rate;if(i>this.context.currentTime-.02)return i}return null}async play(){if(await this.ready,await Promise.race([this.context.resume(),new Promise(t=>setTimeout(t,Ev))]),this.context.state!=="running")throw new lr;this.buffer&&(this.rest>=this.duration-.01&&(this.rest=0),this.on=!0,this.begin(this.rest))}pause(){this.rest=this.on?Math.max(0,this.songAt(this.heard())):this.rest,this.on=!1,this.hush()}seek(t){this.rest=Math.min(Math.max(t,0),this.duration),this.on&&this.begin(this.rest)}loop(t){t?.[0]===this.span?.[0]&&t?.[1]===this.span?.[1]||(this.span=t,this.on&&this.begin(this.songAt(this.heard())))}get speed(){return this.rate}set speed(t){if(t===this.rate)return;let e=this.on?this.songAt(this.heard()):this.rest;this.rate=t,this.on&&this.begin(e)}get volume(){return this.output.gain.value}set volume(t){this.output.gain.value=t}hush(){clearInterval(this.timer);for(let{node:t}of this.nodes)t.stop();this.nodes=[],this.pieces=[],this.stretcher=null}begin(t){this.hush(),this.rest=this.shown=t,this.stamp=performance.now(),this.pieces=[{at:this.context.currentTime+Cv,from:t,to:t}],this.fill(),this.timer=window.setInterval(()=>this.fill(),100)}fill(){let{context:t,pieces:e}=this;if(!(!this.buffer||!this.on)){for(;e.length>2&&e[1].at<t.currentTime-2;)e.shift();for(this.nodes=this.nodes.filter(({until:i})=>i>t.currentTime-.1);;){let i=e[e.length-1],s=i.at+(i.to-i.from)/this.rate;if(s>t.currentTime+Sv)return;let r=this.span?this.span[1]:this.duration,o=i.to>=r-1e-6;if(o&&!this.span)return;let a=o&&this.span?this.span[0]:i.to;o&&(this.stretcher=null);let l=this.hand(s,a,Math.min(r,a+Math.max(.05,wv*this.rate)));if(l<=a)return;e.push({at:s,from:a,to:l})}}}hand(t,e,i){let s=this.buffer,r=this.context.createBufferSource();r.connect(this.output);let o=i;if(this.rate===1)r.buffer=s,r.start(t,e+this.skip,i-e);else{this.stretcher??=new hl(s,this.mono,e+this.skip,this.rate);let{hop:a}=this.stretcher,l=Math.max(1,Math.ceil((i-e)/this.rate*s.sampleRate/a-1e-6)),c=this.stretcher.next(l),u=this.context.createBuffer(c.length,l*a,s.sampleRate);c.forEach((h,d)=>u.copyToChannel(h,d)),r.buffer=u,r.start(t),o=Math.min(this.duration,e+l*a/s.sampleRate*this.rate)}return this.nodes.push({node:r,until:t+(o-e)/this.rate}),o}};var cr=Ut(!1),ws=Ut(100),Ts=Ut(null),wh=Ut(null),Th=class{player=null;drawn=[];loaded=!1;dirty=!0;constructor(){dn(()=>{let e=Pt.value?.duration,i=_h.value??fe.value;!e||!i||(this.player?(this.player.count(i),!this.loaded&&this.player.clock.duration!==e&&this.player.take(new wi(e))):this.player=this.made(e,i))}),Cp(e=>this.seek(e));let t=()=>{this.frame(),requestAnimationFrame(t)};requestAnimationFrame(t)}made(t,e){let i=new ul(new wi(t),e,{changed:()=>bi.value=i.clock.playing||i.counting!==null,counted:s=>wh.value=s,notice:s=>bs(s,!0)});return i.clock.seek(pn.peek()),i}get clock(){return this.player?.clock??Rv}touch(){this.dirty=!0}seek(t){this.clock.seek(t),pn.value=this.clock.now(),this.dirty=!0}async toggle(){this.player&&(!this.player.clock.playing&&!this.player.counting&&await this.load(),await this.player.toggle(),this.dirty=!0)}async load(){if(this.loaded||!this.player)return;this.loaded=!0;let t=Pt.value?.duration??1,e=i=>bs(`${i} The show plays without sound.`,!0);try{let i=new fl(await ep("track.mp3"),t,s=>{this.player.take(new wi(t)),e(s)});this.player.take(i)}catch(i){e(i instanceof Error?i.message:String(i))}}setClicks(t){cr.value=t,this.player&&(this.player.clicks.on=t)}setPace(t){ws.value=this.player?.pace(t)??100,this.dirty=!0}setRepeat(t){this.player&&(this.player.lift(),t&&(this.player.mark("a",t[0]),this.player.mark("b",t[1])),Ts.value=this.player.span)}frame(){if(!this.player)return;let t=this.player.clock.playing,e=this.player.frame();t&&(pn.value=e);let i=t||this.player.counting!==null;if(bi.value!==i&&(bi.value=i),t&&Pv(),!(!t&&!this.dirty)){this.dirty=!1;for(let s of this.drawn)s(e)}}},Rv=new wi(1),Xp=null;function Pv(){let n=document.querySelector(".head")?.closest(".eight")??null;n&&n!==Xp&&n.scrollIntoView({block:"nearest"}),Xp=n}var we=new Th;function qp(){let n=fe.value,t=Pt.value;if(!n||!t)return null;let e=pn.value,i=n.beatAt(e),{bar:s,beat:r}=n.position(Math.max(i,n.first)+1e-6),o=l=>we.seek(Math.max(0,n.secondsAt(n.barStart(s+l)))),a=t.sections.find(l=>e>=l.start&&e<l.end)??null;return p("footer",{class:"transport","aria-label":"The song",children:[p("button",{type:"button",title:"A bar back",onClick:()=>o(-1),children:"\u2039 bar"}),p("button",{type:"button",class:"main",onClick:()=>{we.toggle()},title:"Play or stop (Space)",children:bi.value?"Stop":"Play"}),p("button",{type:"button",title:"A bar on",onClick:()=>o(1),children:"bar \u203A"}),p("p",{class:"where",children:[p("b",{children:wh.value??s}),wh.value===null&&` . ${Math.floor(r)}`]}),p("input",{type:"range",min:0,max:t.duration,step:.1,value:e,"aria-label":"Where the song is","aria-valuetext":`bar ${s}, count ${Math.floor(r)}`,onInput:l=>we.seek(Number(l.currentTarget.value))}),p("p",{class:"time",children:[dl(e)," of ",dl(t.duration)]}),p("details",{class:"how",children:[p("summary",{children:["How",ws.value!==100||cr.value||Ts.value?":":""," ",[ws.value!==100?`${ws.value} %`:"",cr.value?"clicks":"",Ts.value?"repeated":""].filter(Boolean).join(", ")]}),p("div",{children:[p("label",{children:["Speed ",p("input",{type:"range",min:Mh,max:Sh,step:5,value:ws.value,"aria-valuetext":`${ws.value} percent`,onInput:l=>we.setPace(Number(l.currentTarget.value))})," ",ws.value," %"]}),p("label",{children:[p("input",{type:"checkbox",checked:cr.value,onChange:l=>we.setClicks(l.currentTarget.checked)})," Click on every count"]}),p("label",{children:[p("input",{type:"checkbox",onChange:l=>we.player&&(we.player.countIn=l.currentTarget.checked)})," A bar of counting first"]}),p("button",{type:"button",class:"small","aria-pressed":Ts.value!==null,disabled:!a&&!Ts.value,onClick:()=>we.setRepeat(Ts.value?null:[a.start,a.end]),children:Ts.value?"Repeat no more":`Repeat ${a?.name??"the section"}`})]})]})]})}var dl=n=>`${Math.floor(n/60)}:${String(Math.floor(n%60)).padStart(2,"0")}`;var Eh=8,Iv=400,Dv=400,Vn=Ut([]),xo=Ut(null),Jp=null,Ch=0,Kp=0;dn(()=>{let n=yt.value?.revision;n!==void 0&&an.peek()&&Mi.peek()?.revision!==n&&yh()});function pl(n){if(Kp=performance.now(),!bi.value){Vn.value=[],xo.value=null,we.toggle(),De.value="The song plays: tap on each beat.";return}Jp=we.clock.latency?.()??null,Vn.value=[...Vn.value,we.clock.at?.(n)??we.clock.now()],clearTimeout(Ch),Vn.value.length>=Eh&&(Ch=window.setTimeout(()=>{Lv()},Iv))}async function Lv(){let n=Vn.value;try{let t=await Ce("taps",{taps:n,latency:Jp});if(Vn.value!==n)return;xo.value=t,De.value=t.words.join(" ")}catch(t){Vn.value===n&&(De.value=t instanceof Ie?t.message:"The program behind this page does not answer.")}}function Nv(){clearTimeout(Ch),Vn.value=[],xo.value=null,De.value="The taps are forgotten."}function Uv(){let n=Vn.value.length,t=xo.value;return p("section",{"aria-labelledby":"count-tap",children:[p("h3",{id:"count-tap",children:"Tap along"}),p("p",{class:"quiet",children:"Press once, and the song plays; then tap on each beat you feel, eight times or more. Your first tap is taken for a one."}),p("p",{class:"row",children:[p("button",{type:"button",class:"tap","aria-keyshortcuts":"T",onPointerDown:e=>e.button===0&&pl(e.timeStamp),onKeyDown:e=>{e.key!==" "&&e.key!=="Enter"||(e.preventDefault(),e.stopPropagation(),e.repeat||pl(e.timeStamp))},onClick:e=>e.detail===0&&performance.now()-Kp>Dv&&pl(e.timeStamp),children:[bi.value?"Tap":"Play and tap"," ",p("kbd",{children:"T"}),p("b",{children:n?n<Eh?`${n} of ${Eh}`:`${n} taps`:""})]}),p("button",{type:"button",disabled:!n,onClick:Nv,children:"Start over"})]}),t&&p("div",{class:"found",children:[t.words.map(e=>p("p",{children:e},e)),t.offers.map(e=>p("p",{children:p("button",{type:"button",onClick:()=>Si(e.values,e.words),children:e.words})},e.words)),!t.offers.length&&p("p",{class:"quiet",children:"Nothing needs to be changed."})]})]})}function Fv(n){let t=bi.value?we.clock.at?.(n)??we.clock.now():pn.value;return Math.round($i.value.beatAt(t))}function Rh(n){let t=$i.value;if(!t)return;let e=Fv(n);Si({one:Ss(t.secondsAt(e))},`The one is at ${Ss(t.secondsAt(e))} now.`)}function $p(n){let t=$i.value;if(!t)return;let{bar:e}=t.position(Math.max(t.beatAt(pn.value),0)+1e-6),i=Ss(t.secondsAt(t.barStart(Math.max(e,1))+n));Si({one:i},n<0?"The one is a beat earlier now.":"The one is a beat later now.")}var Ah=["half",null,"double"];function Yp(n){let t=or("steady");if(t){let i=Number(t.tempo)*2**n;return i>=20&&i<=400?{steady:{tempo:Math.round(i*1e3)/1e3,at:t.at}}:null}let e=Ah.indexOf(or("tempo")??null)+n;return e in Ah?{tempo:Ah[e]}:null}function Ov(){let n=Mi.value,t=$i.value;if(!t)return null;let e=t.secondsAt(0),i=n&&an.value?n.bpm:Bv(t.times),s=or("metre"),r=Yp(-1),o=Yp(1),a=zv(or("shift")),l=["metre","one","tempo","shift","beats","steady"].filter(c=>or(c)!==null);return p("section",{"aria-labelledby":"count-is",children:[p("h3",{id:"count-is",children:"The count"}),p("p",{class:"tells",children:[p("b",{children:i.toFixed(1)})," beats a minute, ",p("b",{children:t.metre})," to the bar, bar 1 at ",Ss(Math.max(0,e)),". ",l.length?"":"As it was heard."]}),p("p",{class:"row",children:[p("button",{type:"button","aria-keyshortcuts":"1",onPointerDown:c=>c.button===0&&kv(c.timeStamp),onClick:c=>c.detail===0?Rh(c.timeStamp):Rh(jp),children:["This is one ",p("kbd",{children:"1"})]}),p("button",{type:"button",onClick:()=>$p(-1),children:"One a beat earlier"}),p("button",{type:"button",onClick:()=>$p(1),children:"One a beat later"})]}),p("p",{class:"row",children:[p("button",{type:"button",disabled:!r,onClick:()=>r&&Si(r,"Half as fast."),children:"Half as fast"}),p("button",{type:"button",disabled:!o,onClick:()=>o&&Si(o,"Twice as fast."),children:"Twice as fast"}),p("label",{children:["Beats a bar ",p("select",{value:String(s??""),onChange:c=>Si({metre:c.currentTarget.value?Number(c.currentTarget.value):null},"Another metre."),children:[p("option",{value:"",children:"as heard"}),[2,3,4,5,6,7].map(c=>p("option",{value:String(c),children:c},c))]})]}),p("label",{children:["Later by ",p("input",{type:"number",step:5,min:-2e3,max:2e3,value:a,onChange:c=>Si({shift:Number(c.currentTarget.value)?`${Math.round(Number(c.currentTarget.value))} ms`:null},"All beats moved.")})," ms"]})]}),p("p",{class:"row",children:[p("label",{children:[p("input",{type:"checkbox",checked:cr.value,onChange:c=>we.setClicks(c.currentTarget.checked)})," Click on every count, higher on the one"]}),l.length>0&&p("button",{type:"button",class:"small",onClick:()=>Si(Object.fromEntries(l.map(c=>[c,null])),"As it was heard."),children:"Back to what was heard"})]})]})}var jp=0,kv=n=>jp=n;function Bv(n){let t=Math.min(8,n.length-1),e=n.slice(t).map((i,s)=>i-n[s]).sort((i,s)=>i-s);return 60*t/e[Math.floor(e.length/2)]}function zv(n){let t=/^\s*(-?[\d.]+)\s*(ms|s)?\s*$/.exec(String(n??""));return t?Math.round(Number(t[1])*(t[2]==="ms"?1:1e3)):0}function Vv(){let n=Hp(),t=$i.value;if(!t||!Pt.value)return null;let e=bh(n.map(u=>u.name)),i=(u,h,d)=>ll(n.map((f,g)=>g===u?{...f,...h}:f),d),s=(u,h,d)=>{let f=u>0?n[u-1].seconds+.1:0,g=u+1<n.length?n[u+1].seconds-.1:Pt.value.duration-.1;h>f&&h<g?i(u,{start:ar(h),seconds:h},d):De.value="There is another section already."},r=u=>t.position(t.beatAt(u)+.001).bar,o=u=>{let{bar:h,beat:d,inBar:f}=t.position(t.beatAt(u)+.001);return t.secondsAt(t.barStart(d-1<f/2?h:h+1))},a=o(pn.value),l=n.filter(u=>u.seconds<=a+.05).length-1,c=()=>{if(l>=0&&a-n[l].seconds<.1){De.value="A section begins here already.";return}let u={start:ar(a),name:"new",was:null,seconds:a};ll([...n.slice(0,l+1),u,...n.slice(l+1)],`A section begins at ${u.start}.`)};return p("section",{"aria-labelledby":"count-parts",children:[p("h3",{id:"count-parts",children:"Sections"}),p("p",{class:"quiet",children:"Give parts that come back the same name; they are numbered then. A section lasts until the next one."}),p("ol",{class:"borders",children:n.map((u,h)=>p("li",{children:[p("label",{children:[p("span",{class:"unseen",children:["Name of the section from ",u.start]}),p("input",{type:"text",list:"section-names",value:u.name,onChange:d=>d.currentTarget.value.trim()&&i(h,{name:d.currentTarget.value.trim()},`Now called ${d.currentTarget.value.trim()}.`)})]}),p("button",{type:"button",class:"small",title:"Go there",onClick:()=>we.seek(u.seconds),children:h?`from ${u.start}`:"from the start"}),h>0&&p("span",{role:"group","aria-label":`${e[h]} begins`,children:[p("button",{type:"button",class:"small","aria-label":`${e[h]} a bar earlier`,onClick:()=>s(h,t.secondsAt(t.barStart(r(u.seconds)-(o(u.seconds)<u.seconds-.02?0:1))),"A bar earlier."),children:"\u2039 bar"}),p("button",{type:"button",class:"small","aria-label":`${e[h]} a bar later`,onClick:()=>s(h,t.secondsAt(t.barStart(r(u.seconds)+1)),"A bar later."),children:"bar \u203A"}),p("button",{type:"button",class:"small","aria-label":`${e[h]} begins here, where the song is`,onClick:()=>s(h,a,`It begins at ${ar(a)}.`),children:"here"}),p("button",{type:"button",class:"small","aria-label":`Join ${e[h]} with the section before it`,onClick:()=>ll(n.filter((d,f)=>f!==h),`${e[h]} is joined with ${e[h-1]}.`),children:"join"})]})]},h))}),p("datalist",{id:"section-names",children:[...new Set(["intro","verse","chorus","bridge","break","outro",...n.map(u=>u.name)])].map(u=>p("option",{value:u},u))}),p("p",{class:"row",children:p("button",{type:"button",onClick:c,children:["Split at ",ar(a)]})})]})}function Gv(){let n=an.value,t=Mi.value;if(!n)return null;let e=async()=>{await qt(xh(n),"The count is set.")&&(vh(),Vn.value=[],xo.value=null)};return p("section",{class:"thought","aria-labelledby":"count-so",children:[p("h3",{id:"count-so",children:"Not written yet"}),t?Hv(t).map(i=>p("p",{children:i},i)):p("p",{class:"quiet",children:al.value?"Looking what it moves \u2026":""}),t&&t.blocks&&t.blocks.told.length>0&&p("ul",{children:[t.blocks.told.map(i=>p("li",{children:[i.before," ",i.title," (",i.who.join(", "),"): ",i.before===i.after?"":`${i.after} now, `,"from ",yo(i.before_s)," to ",yo(i.after_s),Math.abs(i.longer_s)>.05?`, ${Math.abs(i.longer_s).toFixed(1)} s ${i.longer_s>0?"longer":"shorter"}`:""]},`${i.before} ${i.who.join()}`)),t.blocks.told.reduce((i,s)=>i+s.who.length,0)<t.blocks.moved&&p("li",{children:"\u2026 and others"})]}),t?.trouble&&p("p",{class:"fault",children:["On this count the show cannot be danced as it is written: ",t.trouble.message]}),p("p",{class:"row",children:[p("button",{type:"button",class:"main",disabled:!t,onClick:()=>{e()},children:"Set it so"}),p("button",{type:"button",onClick:()=>{vh(),De.value="As it was."},children:"Leave it as it was"})]})]})}var yo=n=>`${Math.floor(Math.max(n,0)/60)}:${(Math.max(n,0)%60).toFixed(1).padStart(4,"0")}`,Zp=(n,t)=>`${n} ${t}${n===1?"":"s"}`;function Hv(n){let t=[],{beats:e,ones:i,blocks:s}=n;if(e&&(e.moved||e.gone||e.come)){let r=[e.same?`${e.same} stay`:"",e.moved?`${e.moved} move a little`:"",e.gone?`${e.gone} go`:"",e.come?`${e.come} come`:""].filter(Boolean);t.push(`Of the beats ${r.join(", ")}.`)}else i&&(i.moved||i.gone||i.come)?t.push(`The beats stay; ${Zp(i.moved+i.gone,"one")} ${i.moved+i.gone===1?"is":"are"} elsewhere.`):e&&t.push("All beats and ones stay.");for(let r of n.borders.slice(0,8))r.before_s===null?t.push(`${r.name} begins at ${yo(r.after_s)}.`):r.after_s===null?t.push(`There is no ${r.name} any more.`):t.push(`${r.name} begins at ${yo(r.after_s)} instead of ${yo(r.before_s)}.`);return s?.moved?t.push(`What is written in bars and counts keeps them, and so sounds elsewhere: ${Zp(s.moved,"move")}, by up to ${s.most_s.toFixed(1)} s. ${s.same?`${s.same} stay.`:""}`):s&&t.push("Nothing that is danced moves."),t}function Wv(n){let t=n.target;if(n.ctrlKey||n.metaKey||n.altKey||n.repeat||t.matches("input:not([type=checkbox]), select, textarea"))return;let e={t:()=>pl(n.timeStamp),1:()=>Rh(n.timeStamp)}[n.key.toLowerCase()];e&&(n.preventDefault(),e())}function Qp(){return Pt.value?p("div",{class:"counting",onKeyDown:Wv,children:[p(Uv,{}),p(Ov,{}),p(Vv,{}),p(Gv,{}),p("p",{class:"quiet",children:["Heard in ",vo.value&&qi.value?.track,": ",dl(Pt.value.duration),". What a loudspeaker without wires adds to the delay no program knows; if all clicks come late there, use one with a wire."]})]}):p("p",{class:"quiet",children:yt.value?.readable?"The song is not counted yet.":"The file cannot be read: mend it under Text."})}function tm({row:n,seconds:[t,e]}){let i=an.value?$i.value:null;if(!i&&!Vn.value.length)return null;let s=a=>100*(a-t)/(e-t),r=[];if(i)for(let a=Math.ceil(i.beatAt(t)-1e-6);i.secondsAt(a)<e-1e-6&&r.length<64;a++)r.push({at:i.secondsAt(a),one:Math.floor(i.position(a+1e-6).beat)===1});let o=Vn.value.filter(a=>a>=t&&a<e);return p("svg",{class:"marks",viewBox:"0 0 100 10",preserveAspectRatio:"none","aria-hidden":"true","data-bar":n.bar,children:[r.map(({at:a,one:l})=>p("path",{class:l?"one":"beat",d:`M${s(a).toFixed(2)} ${l?0:3}V10`},a)),o.map((a,l)=>p("path",{class:"tapped",d:`M${s(a).toFixed(2)} 0V3`},`tap ${l}`))]})}var Gn=Uint8Array,ur=Uint16Array,Xv=Int32Array,em=new Gn([0,0,0,0,0,0,0,0,1,1,1,1,2,2,2,2,3,3,3,3,4,4,4,4,5,5,5,5,0,0,0,0]),nm=new Gn([0,0,0,0,1,1,2,2,3,3,4,4,5,5,6,6,7,7,8,8,9,9,10,10,11,11,12,12,13,13,0,0]),qv=new Gn([16,17,18,0,8,7,9,6,10,5,11,4,12,3,13,2,14,1,15]),im=function(n,t){for(var e=new ur(31),i=0;i<31;++i)e[i]=t+=1<<n[i-1];for(var s=new Xv(e[30]),i=1;i<30;++i)for(var r=e[i];r<e[i+1];++r)s[r]=r-e[i]<<5|i;return{b:e,r:s}},sm=im(em,2),rm=sm.b,$v=sm.r;rm[28]=258,$v[258]=28;var om=im(nm,0),Yv=om.b,SE=om.r,Dh=new ur(32768);for(se=0;se<32768;++se)Ti=(se&43690)>>1|(se&21845)<<1,Ti=(Ti&52428)>>2|(Ti&13107)<<2,Ti=(Ti&61680)>>4|(Ti&3855)<<4,Dh[se]=((Ti&65280)>>8|(Ti&255)<<8)>>1;var Ti,se,bo=(function(n,t,e){for(var i=n.length,s=0,r=new ur(t);s<i;++s)n[s]&&++r[n[s]-1];var o=new ur(t);for(s=1;s<t;++s)o[s]=o[s-1]+r[s-1]<<1;var a;if(e){a=new ur(1<<t);var l=15-t;for(s=0;s<i;++s)if(n[s])for(var c=s<<4|n[s],u=t-n[s],h=o[n[s]-1]++<<u,d=h|(1<<u)-1;h<=d;++h)a[Dh[h]>>l]=c}else for(a=new ur(i),s=0;s<i;++s)n[s]&&(a[s]=Dh[o[n[s]-1]++]>>15-n[s]);return a}),Mo=new Gn(288);for(se=0;se<144;++se)Mo[se]=8;var se;for(se=144;se<256;++se)Mo[se]=9;var se;for(se=256;se<280;++se)Mo[se]=7;var se;for(se=280;se<288;++se)Mo[se]=8;var se,am=new Gn(32);for(se=0;se<32;++se)am[se]=5;var se;var Zv=bo(Mo,9,1);var Jv=bo(am,5,1),Ph=function(n){for(var t=n[0],e=1;e<n.length;++e)n[e]>t&&(t=n[e]);return t},Kn=function(n,t,e){var i=t/8|0;return(n[i]|n[i+1]<<8)>>(t&7)&e},Ih=function(n,t){var e=t/8|0;return(n[e]|n[e+1]<<8|n[e+2]<<16)>>(t&7)},Kv=function(n){return(n+7)/8|0},jv=function(n,t,e){return(t==null||t<0)&&(t=0),(e==null||e>n.length)&&(e=n.length),new Gn(n.subarray(t,e))};var Qv=["unexpected EOF","invalid block type","invalid length/literal","invalid distance","stream finished","no stream handler",,"no callback","invalid UTF-8 data","extra field too long","date not in range 1980-2099","filename too long","stream finishing","invalid zip data"],Ai=function(n,t,e){var i=new Error(t||Qv[n]);if(i.code=n,Error.captureStackTrace&&Error.captureStackTrace(i,Ai),!e)throw i;return i},ty=function(n,t,e,i){var s=n.length,r=i?i.length:0;if(!s||t.f&&!t.l)return e||new Gn(0);var o=!e,a=o||t.i!=2,l=t.i;o&&(e=new Gn(s*3));var c=function(Dt){var ne=e.length;if(Dt>ne){var oe=new Gn(Math.max(ne*2,Dt));oe.set(e),e=oe}},u=t.f||0,h=t.p||0,d=t.b||0,f=t.l,g=t.d,v=t.m,_=t.n,m=s*8;do{if(!f){u=Kn(n,h,1);var y=Kn(n,h+1,3);if(h+=3,y)if(y==1)f=Zv,g=Jv,v=9,_=5;else if(y==2){var A=Kn(n,h,31)+257,x=Kn(n,h+10,15)+4,T=A+Kn(n,h+5,31)+1;h+=14;for(var D=new Gn(T),R=new Gn(19),P=0;P<x;++P)R[qv[P]]=Kn(n,h+P*3,7);h+=x*3;for(var F=Ph(R),B=(1<<F)-1,I=bo(R,F,1),P=0;P<T;){var W=I[Kn(n,h,B)];h+=W&15;var M=W>>4;if(M<16)D[P++]=M;else{var X=0,k=0;for(M==16?(k=3+Kn(n,h,3),h+=2,X=D[P-1]):M==17?(k=3+Kn(n,h,7),h+=3):M==18&&(k=11+Kn(n,h,127),h+=7);k--;)D[P++]=X}}var Q=D.subarray(0,A),G=D.subarray(A);v=Ph(Q),_=Ph(G),f=bo(Q,v,1),g=bo(G,_,1)}else Ai(1);else{var M=Kv(h)+4,b=n[M-4]|n[M-3]<<8,E=M+b;if(E>s){l&&Ai(0);break}a&&c(d+b),e.set(n.subarray(M,E),d),t.b=d+=b,t.p=h=E*8,t.f=u;continue}if(h>m){l&&Ai(0);break}}a&&c(d+131072);for(var tt=(1<<v)-1,et=(1<<_)-1,bt=h;;bt=h){var X=f[Ih(n,h)&tt],Lt=X>>4;if(h+=X&15,h>m){l&&Ai(0);break}if(X||Ai(2),Lt<256)e[d++]=Lt;else if(Lt==256){bt=h,f=null;break}else{var Z=Lt-254;if(Lt>264){var P=Lt-257,dt=em[P];Z=Kn(n,h,(1<<dt)-1)+rm[P],h+=dt}var xt=g[Ih(n,h)&et],Ct=xt>>4;xt||Ai(3),h+=xt&15;var G=Yv[Ct];if(Ct>3){var dt=nm[Ct];G+=Ih(n,h)&(1<<dt)-1,h+=dt}if(h>m){l&&Ai(0);break}a&&c(d+131072);var mt=d+Z;if(d<G){var Ot=r-G,Pe=Math.min(G,mt);for(Ot+d<0&&Ai(3);d<Pe;++d)e[d]=i[Ot+d]}for(;d<mt;++d)e[d]=e[d-G]}}t.l=f,t.p=bt,t.b=d,t.f=u,f&&(u=1,t.m=v,t.d=g,t.n=_)}while(!u);return d!=e.length&&o?jv(e,0,d):e.subarray(0,d)};var ey=new Gn(0);function lm(n,t){return ty(n,{i:2},t&&t.out,t&&t.dictionary)}var ny=typeof TextDecoder<"u"&&new TextDecoder,iy=0;try{ny.decode(ey,{stream:!0}),iy=1}catch{}var ml=class{constructor(t,e){this.head=t;this.samples=e;this.channels=t.steps.length,this.offsets=new Int32Array(t.intervals.length);let i=0;t.intervals.forEach((s,r)=>{this.offsets[r]=i,i+=this.channels*(s+2+3+1)})}head;samples;offsets;channels;read(t,e,i=this.channels){let{head:s,samples:r}=this,o=(t-s.start)/8,a=Math.min(Math.max(Math.floor(o),0),s.intervals.length-1),l=s.intervals[a],c=Math.min(Math.max(o-a,0),1)*l,u=Math.min(Math.floor(c),l-1),h=c-u,d=h+2,f=h+1,g=h-1,v=h-2,_=h-3,m=-f*h*g*v*_/120,y=d*h*g*v*_/24,M=-d*f*g*v*_/12,b=d*f*h*v*_/12,E=-d*f*h*g*_/24,A=d*f*h*g*v/120,x=l+2+3+1,T=this.offsets[a]+u;for(let D=0;D<i;D++,T+=x)e[D]=s.bases[D]+s.steps[D]*(m*r[T]+y*r[T+1]+M*r[T+2]+b*r[T+3]+E*r[T+4]+A*r[T+5])}};var As=["left","right"];function sy(n){let t=atob(n.trim()),e=new Uint8Array(t.length);for(let i=0;i<t.length;i++)e[i]=t.charCodeAt(i);return e}function hm(n){let t=lm(sy(n.keys)),e=t.length/2,i=0,s=o=>{let a=o.steps.length,l=0;for(let h of o.intervals)l+=a*(h+2+3+1);let c=new Int16Array(l),u=0;for(let h of o.intervals){let d=h+2+3+1;for(let f=0;f<a;f++){let g=0,v=0;for(let _=0;_<d;_++,i++){let m=t[i]|t[e+i]<<8,y=m>>>1^-(m&1);_===0?v=y:(g=_===1?y:g+y,v+=g),v=v<<16>>16,c[u++]=v}}}return new ml(o,c)},r=o=>{let a={floor:s(o.floor)};for(let l of As){let c=o[l];c&&(a[l]=s(c))}return a};return n.cast.map(o=>{let a=r(o.tracks);return o.drawn&&(a.drawn=r(o.drawn)),a})}function fm(n,t,e){if(!n?.length)return void e.fill(0);let i=0;for(;i<n.length-1&&n[i+1][0]<=t;)i++;let s=n[Math.min(i+1,n.length-1)],r=s[0]-n[i][1],o=r>0?Math.min(Math.max((t-n[i][1])/r,0),1):0,a=o*o*o*(10-15*o+6*o*o);for(let l=0;l<5;l++)e[l]=n[i][l+2]+a*(s[l+2]-n[i][l+2])}function Es([n,t,e]){let i=Math.cos(n),s=Math.sin(n),r=Math.cos(t),o=Math.sin(t),a=Math.cos(e),l=Math.sin(e);return[i*a+s*o*l,-s*r,i*l-s*o*a,s*a-i*o*l,i*r,s*l+i*o*a,-r*l,-o,r*a]}function dm(n){return ry(Es(n),Es([0,n[3],n[4],0,0]))}function ry(n,t){return Array.from({length:9},(e,i)=>{let s=i-i%3,r=i%3;return n[s]*t[r]+n[s+1]*t[r+3]+n[s+2]*t[r+6]})}function Nh(n,t,e,i,s){return s[0]=n[0]*t+n[1]*e+n[2]*i,s[1]=n[3]*t+n[4]*e+n[5]*i,s[2]=n[6]*t+n[7]*e+n[8]*i,s}function Cs(n,t,e,i){return Nh(Es(t),e[0],e[1],e[2]-n.hips,i),i[2]+=n.hips,i}function hr(n,t,e,i){return Nh(Es([0,t[3],t[4],0,0]),e[0],e[1],e[2]-n.shoulder,i),i[2]+=n.shoulder,Cs(n,t,[...i],i)}function oy(n,t,e,i){return Cs(n,t,[e==="left"?-n.halfShoulder:n.halfShoulder,0,n.shoulder],i)}function pm(n,t,e,i){let s=oy(n,t,e,[0,0,0]),r=Es(t),o=[i[0]-s[0],i[1]-s[1],i[2]-s[2]],a=[0,1,2].map(M=>r[M]*o[0]+r[M+3]*o[1]+r[M+6]*o[2]),l=Lh(a,a)-n.arm**2;if(l<=0)return[0,0,0];let[c,u,h,d]=n.give,f=e==="left"?-1:1,v=[Math.min(Math.max(f*a[0],-c),0)*f,Math.min(Math.max(a[1],-u),h),Math.min(Math.max(a[2],0),d)],_=Lh(v,v),m=Lh(v,a),y=_>0?Math.min(Math.max((m-Math.sqrt(Math.max(m*m-_*l,0)))/_,0),1):0;return Nh(r,y*v[0],y*v[1],y*v[2],[0,0,0])}function Lh(n,t){return n[0]*t[0]+n[1]*t[1]+n[2]*t[2]}function Fh(){let n=()=>({left:[0,0,0],right:[0,0,0]});return{x:0,y:0,cos:1,sin:0,hand:n(),tether:n(),across:n(),plane:n(),bodyHand:n(),bodyPlane:n(),angles:[0,0,0,0,0]}}var de=new Float64Array(9),So=[0,0,0],Uh=[0,0,0];function gl(n,t,e,i){let s=Math.hypot(n,t,e)||1;return i[0]=n/s,i[1]=t/s,i[2]=e/s,i}function mm(n,t){return[n[1]*t[2]-n[2]*t[1],n[2]*t[0]-n[0]*t[2],n[0]*t[1]-n[1]*t[0]]}function vl(n,t,e,i){let s=n.hand[t],r=n.tether[t],o=n.across[t];for(let a=0;a<3;a++)i[a]=s[a]+e[0]*r[a]+e[1]*o[a];return i}function yl(n){return n.heads.slice(0,n.kind==="staff"?2:1)}var _l=class{constructor(t,e){this.entry=t;this.own=e}entry;own;drawn=!1;get tracks(){return this.drawn&&this.own.drawn||this.own}stand(t,e){this.tracks.floor.read(t,de);let i=Math.hypot(de[2],de[3]);e.x=de[0],e.y=de[1],e.cos=de[2]/i,e.sin=de[3]/i}turn(t,e,i){let s=e[0],r=e[1];i[0]=-t.cos*s+t.sin*r,i[1]=-t.sin*s-t.cos*r,i[2]=e[2]}toStage(t,e,i){this.turn(t,e,i),i[0]+=t.x,i[1]+=t.y}at(t,e){this.stand(t,e),fm(this.entry.carriage,t,e.angles);for(let i of As){let s=this.tracks[i],r=this.entry.props[i];if(!s||!r)continue;s.read(t,de);let o=e.bodyHand[i];o[0]=de[0],o[1]=de[1],o[2]=de[2],this.turn(e,gl(de[3],de[4],de[5],So),e.tether[i]);let a=Math.hypot(de[6],de[7],de[8])||1,l=e.bodyPlane[i];l[0]=de[6]/a,l[1]=de[7]/a,l[2]=de[8]/a,this.turn(e,l,e.plane[i]),this.toStage(e,o,e.hand[i]),this.turn(e,gl(...mm(l,So),Uh),e.across[i])}}headAt(t,e,i,s,r){let o=this.tracks[e];if(o){this.stand(t,i),o.read(t,de,r[1]===0?6:9),gl(de[3],de[4],de[5],So),r[1]!==0&&gl(...mm([de[6],de[7],de[8]],So),Uh);for(let a=0;a<3;a++)s[a]=de[a]+r[0]*So[a]+(r[1]&&r[1]*Uh[a]);this.toStage(i,s,s)}}};var ls={LEFT:0,MIDDLE:1,RIGHT:2,ROTATE:0,DOLLY:1,PAN:2},cs={ROTATE:0,PAN:1,DOLLY_PAN:2,DOLLY_ROTATE:3},eg=0,yf=1,ng=2;var ga=1,ig=2,Vr=3,us=0,vn=1,un=2,Fs=0,Gr=1,hs=2,xf=3,bf=4,sg=5;var Os=100,rg=101,og=102,ag=103,lg=104,cg=200,ug=201,hg=202,fg=203,Mf=204,Sf=205,dg=206,pg=207,mg=208,gg=209,_g=210,vg=211,yg=212,xg=213,bg=214,Zl=0,Jl=1,Kl=2,Cr=3,jl=4,Ql=5,tc=6,ec=7,Lc=0,Mg=1,Sg=2,pi=0,wf=1,Tf=2,Af=3,Ef=4,Cf=5,Rf=6,Pf=7;var If=300,ks=301,Hr=302,Nc=303,Uc=304,nc=1e3,li=1001,ic=1002,je=1003,wg=1004;var _a=1005;var _n=1006,Fc=1007;var Oi=1008;var Sn=1009,Df=1010,Lf=1011,Wr=1012,Oc=1013,ni=1014,Xn=1015,ii=1016,kc=1017,Bc=1018,Bs=1020,Nf=35902,Uf=35899,Ff=1021,Of=1022,si=1023,Li=1026,ki=1027,zc=1028,Vc=1029,fs=1030,Gc=1031;var Hc=1033,va=33776,ya=33777,xa=33778,ba=33779,Wc=35840,Xc=35841,qc=35842,$c=35843,Yc=36196,Zc=37492,Jc=37496,Kc=37488,jc=37489,Ma=37490,Qc=37491,tu=37808,eu=37809,nu=37810,iu=37811,su=37812,ru=37813,ou=37814,au=37815,lu=37816,cu=37817,uu=37818,hu=37819,fu=37820,du=37821,pu=36492,mu=36494,gu=36495,_u=36283,vu=36284,Sa=36285,yu=36286;var Oo=2300,sc=2301,$l=2302,lf=2303,cf=2400,uf=2401,hf=2402;var Tg=3200;var xu=0,Ag=1,Bi="",Rn="srgb",ko="srgb-linear",Bo="linear",ce="srgb";var Yl=7680;var Eg=519,Cg=512,Rg=513,Pg=514,kf=515,Ig=516,Dg=517,Bf=518,zf=519,Lg=35044,ds=35048;var Vf="300 es",Wn=2e3,Rr=2001;function ay(n){for(let t=n.length-1;t>=0;--t)if(n[t]>=65535)return!0;return!1}function ly(n){return ArrayBuffer.isView(n)&&!(n instanceof DataView)}function zo(n){return document.createElementNS("http://www.w3.org/1999/xhtml",n)}function Ng(){let n=zo("canvas");return n.style.display="block",n}var gm={},Pr=null;function Gf(...n){let t="THREE."+n.shift();Pr?Pr("log",t,...n):console.log(t,...n)}function Ug(n){let t=n[0];if(typeof t=="string"&&t.startsWith("TSL:")){let e=n[1];e&&e.isStackTrace?n[0]+=" "+e.getLocation():n[1]='Stack trace not available. Enable "THREE.Node.captureStackTrace" to capture stack traces.'}return n}function It(...n){n=Ug(n);let t="THREE."+n.shift();if(Pr)Pr("warn",t,...n);else{let e=n[0];e&&e.isStackTrace?console.warn(e.getError(t)):console.warn(t,...n)}}function Ft(...n){n=Ug(n);let t="THREE."+n.shift();if(Pr)Pr("error",t,...n);else{let e=n[0];e&&e.isStackTrace?console.error(e.getError(t)):console.error(t,...n)}}function Do(...n){let t=n.join(" ");t in gm||(gm[t]=!0,It(...n))}function Fg(n,t,e){return new Promise(function(i,s){function r(){switch(n.clientWaitSync(t,n.SYNC_FLUSH_COMMANDS_BIT,0)){case n.WAIT_FAILED:s();break;case n.TIMEOUT_EXPIRED:setTimeout(r,e);break;default:i()}}setTimeout(r,e)})}var Og={[Zl]:Zl,[Kl]:tc,[jl]:jl,[Cr]:Ql,[Jl]:Jl,[tc]:Kl,[ec]:ec,[Ql]:Cr},ei=class{addEventListener(t,e){this._listeners===void 0&&(this._listeners={});let i=this._listeners;i[t]===void 0&&(i[t]=[]),i[t].indexOf(e)===-1&&i[t].push(e)}hasEventListener(t,e){let i=this._listeners;return i===void 0?!1:i[t]!==void 0&&i[t].indexOf(e)!==-1}removeEventListener(t,e){let i=this._listeners;if(i===void 0)return;let s=i[t];if(s!==void 0){let r=s.indexOf(e);r!==-1&&s.splice(r,1)}}dispatchEvent(t){let e=this._listeners;if(e===void 0)return;let i=e[t.type];if(i!==void 0){t.target=this;let s=i.slice(0);for(let r=0,o=s.length;r<o;r++)s[r].call(this,t);t.target=null}}},ln=["00","01","02","03","04","05","06","07","08","09","0a","0b","0c","0d","0e","0f","10","11","12","13","14","15","16","17","18","19","1a","1b","1c","1d","1e","1f","20","21","22","23","24","25","26","27","28","29","2a","2b","2c","2d","2e","2f","30","31","32","33","34","35","36","37","38","39","3a","3b","3c","3d","3e","3f","40","41","42","43","44","45","46","47","48","49","4a","4b","4c","4d","4e","4f","50","51","52","53","54","55","56","57","58","59","5a","5b","5c","5d","5e","5f","60","61","62","63","64","65","66","67","68","69","6a","6b","6c","6d","6e","6f","70","71","72","73","74","75","76","77","78","79","7a","7b","7c","7d","7e","7f","80","81","82","83","84","85","86","87","88","89","8a","8b","8c","8d","8e","8f","90","91","92","93","94","95","96","97","98","99","9a","9b","9c","9d","9e","9f","a0","a1","a2","a3","a4","a5","a6","a7","a8","a9","aa","ab","ac","ad","ae","af","b0","b1","b2","b3","b4","b5","b6","b7","b8","b9","ba","bb","bc","bd","be","bf","c0","c1","c2","c3","c4","c5","c6","c7","c8","c9","ca","cb","cc","cd","ce","cf","d0","d1","d2","d3","d4","d5","d6","d7","d8","d9","da","db","dc","dd","de","df","e0","e1","e2","e3","e4","e5","e6","e7","e8","e9","ea","eb","ec","ed","ee","ef","f0","f1","f2","f3","f4","f5","f6","f7","f8","f9","fa","fb","fc","fd","fe","ff"],_m=1234567,Lo=Math.PI/180,Ir=180/Math.PI;function zs(){let n=Math.random()*4294967295|0,t=Math.random()*4294967295|0,e=Math.random()*4294967295|0,i=Math.random()*4294967295|0;return(ln[n&255]+ln[n>>8&255]+ln[n>>16&255]+ln[n>>24&255]+"-"+ln[t&255]+ln[t>>8&255]+"-"+ln[t>>16&15|64]+ln[t>>24&255]+"-"+ln[e&63|128]+ln[e>>8&255]+"-"+ln[e>>16&255]+ln[e>>24&255]+ln[i&255]+ln[i>>8&255]+ln[i>>16&255]+ln[i>>24&255]).toLowerCase()}function Ht(n,t,e){return Math.max(t,Math.min(e,n))}function Hf(n,t){return(n%t+t)%t}function cy(n,t,e,i,s){return i+(n-t)*(s-i)/(e-t)}function uy(n,t,e){return n!==t?(e-n)/(t-n):0}function No(n,t,e){return(1-e)*n+e*t}function hy(n,t,e,i){return No(n,t,1-Math.exp(-e*i))}function fy(n,t=1){return t-Math.abs(Hf(n,t*2)-t)}function dy(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*(3-2*n))}function py(n,t,e){return n<=t?0:n>=e?1:(n=(n-t)/(e-t),n*n*n*(n*(n*6-15)+10))}function my(n,t){return n+Math.floor(Math.random()*(t-n+1))}function gy(n,t){return n+Math.random()*(t-n)}function _y(n){return n*(.5-Math.random())}function vy(n){n!==void 0&&(_m=n);let t=_m+=1831565813;return t=Math.imul(t^t>>>15,t|1),t^=t+Math.imul(t^t>>>7,t|61),((t^t>>>14)>>>0)/4294967296}function yy(n){return n*Lo}function xy(n){return n*Ir}function by(n){return n>0&&Number.isInteger(n)&&2**Math.round(Math.log2(n))===n}function My(n){return Math.pow(2,Math.ceil(Math.log(n)/Math.LN2))}function Wf(n){return Math.pow(2,Math.floor(Math.log(n)/Math.LN2))}function Sy(n,t,e,i,s){let r=Math.cos,o=Math.sin,a=r(e/2),l=o(e/2),c=r((t+i)/2),u=o((t+i)/2),h=r((t-i)/2),d=o((t-i)/2),f=r((i-t)/2),g=o((i-t)/2);switch(s){case"XYX":n.set(a*u,l*h,l*d,a*c);break;case"YZY":n.set(l*d,a*u,l*h,a*c);break;case"ZXZ":n.set(l*h,l*d,a*u,a*c);break;case"XZX":n.set(a*u,l*g,l*f,a*c);break;case"YXY":n.set(l*f,a*u,l*g,a*c);break;case"ZYZ":n.set(l*g,l*f,a*u,a*c);break;default:It("MathUtils: .setQuaternionFromProperEuler() encountered an unknown order: "+s)}}function Xf(n){switch(n.constructor){case Uint32Array:return 4294967295;case Uint16Array:return 65535;case Uint8Array:case Uint8ClampedArray:return 255;case Int32Array:return 2147483647;case Int16Array:return 32767;case Int8Array:return 127;default:return}}function kg(n,t){if(t.constructor===Float32Array)return n;let e=Xf(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.max(n/e,-1)}function Bg(n,t){if(t.constructor===Float32Array)return n;let e=Xf(t);if(e===void 0)throw new Error("THREE.MathUtils: Invalid component type.");return Math.round(n*e)}var bu={DEG2RAD:Lo,RAD2DEG:Ir,generateUUID:zs,clamp:Ht,euclideanModulo:Hf,mapLinear:cy,inverseLerp:uy,lerp:No,damp:hy,pingpong:fy,smoothstep:dy,smootherstep:py,randInt:my,randFloat:gy,randFloatSpread:_y,seededRandom:vy,degToRad:yy,radToDeg:xy,isPowerOfTwo:by,ceilPowerOfTwo:My,floorPowerOfTwo:Wf,setQuaternionFromProperEuler:Sy,normalize:Bg,denormalize:kg},rt=class{static{this.prototype.isVector2=!0}constructor(t=0,e=0){this.x=t,this.y=e}get width(){return this.x}set width(t){this.x=t}get height(){return this.y}set height(t){this.y=t}set(t,e){return this.x=t,this.y=e,this}setScalar(t){return this.x=t,this.y=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;default:throw new Error("THREE.Vector2: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;default:throw new Error("THREE.Vector2: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y)}copy(t){return this.x=t.x,this.y=t.y,this}add(t){return this.x+=t.x,this.y+=t.y,this}addScalar(t){return this.x+=t,this.y+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this}subScalar(t){return this.x-=t,this.y-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this}multiply(t){return this.x*=t.x,this.y*=t.y,this}multiplyScalar(t){return this.x*=t,this.y*=t,this}divide(t){return this.x/=t.x,this.y/=t.y,this}divideScalar(t){return this.multiplyScalar(1/t)}applyMatrix3(t){let e=this.x,i=this.y,s=t.elements;return this.x=s[0]*e+s[3]*i+s[6],this.y=s[1]*e+s[4]*i+s[7],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this}clamp(t,e){return this.x=Ht(this.x,t.x,e.x),this.y=Ht(this.y,t.y,e.y),this}clampScalar(t,e){return this.x=Ht(this.x,t,e),this.y=Ht(this.y,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Ht(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this}negate(){return this.x=-this.x,this.y=-this.y,this}dot(t){return this.x*t.x+this.y*t.y}cross(t){return this.x*t.y-this.y*t.x}lengthSq(){return this.x*this.x+this.y*this.y}length(){return Math.sqrt(this.x*this.x+this.y*this.y)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)}normalize(){return this.divideScalar(this.length()||1)}angle(){return Math.atan2(-this.y,-this.x)+Math.PI}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Ht(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y;return e*e+i*i}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this}equals(t){return t.x===this.x&&t.y===this.y}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this}rotateAround(t,e){let i=Math.cos(e),s=Math.sin(e),r=this.x-t.x,o=this.y-t.y;return this.x=r*i-o*s+t.x,this.y=r*s+o*i+t.y,this}random(){return this.x=Math.random(),this.y=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y}},We=class{constructor(t=0,e=0,i=0,s=1){this.isQuaternion=!0,this._x=t,this._y=e,this._z=i,this._w=s}static slerpFlat(t,e,i,s,r,o,a){let l=i[s+0],c=i[s+1],u=i[s+2],h=i[s+3],d=r[o+0],f=r[o+1],g=r[o+2],v=r[o+3];if(h!==v||l!==d||c!==f||u!==g){let _=l*d+c*f+u*g+h*v;_<0&&(d=-d,f=-f,g=-g,v=-v,_=-_);let m=1-a;if(_<.9995){let y=Math.acos(_),M=Math.sin(y);m=Math.sin(m*y)/M,a=Math.sin(a*y)/M,l=l*m+d*a,c=c*m+f*a,u=u*m+g*a,h=h*m+v*a}else{l=l*m+d*a,c=c*m+f*a,u=u*m+g*a,h=h*m+v*a;let y=1/Math.sqrt(l*l+c*c+u*u+h*h);l*=y,c*=y,u*=y,h*=y}}t[e]=l,t[e+1]=c,t[e+2]=u,t[e+3]=h}static multiplyQuaternionsFlat(t,e,i,s,r,o){let a=i[s],l=i[s+1],c=i[s+2],u=i[s+3],h=r[o],d=r[o+1],f=r[o+2],g=r[o+3];return t[e]=a*g+u*h+l*f-c*d,t[e+1]=l*g+u*d+c*h-a*f,t[e+2]=c*g+u*f+a*d-l*h,t[e+3]=u*g-a*h-l*d-c*f,t}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get w(){return this._w}set w(t){this._w=t,this._onChangeCallback()}set(t,e,i,s){return this._x=t,this._y=e,this._z=i,this._w=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._w)}copy(t){return this._x=t.x,this._y=t.y,this._z=t.z,this._w=t.w,this._onChangeCallback(),this}setFromEuler(t,e=!0){let i=t._x,s=t._y,r=t._z,o=t._order,a=Math.cos,l=Math.sin,c=a(i/2),u=a(s/2),h=a(r/2),d=l(i/2),f=l(s/2),g=l(r/2);switch(o){case"XYZ":this._x=d*u*h+c*f*g,this._y=c*f*h-d*u*g,this._z=c*u*g+d*f*h,this._w=c*u*h-d*f*g;break;case"YXZ":this._x=d*u*h+c*f*g,this._y=c*f*h-d*u*g,this._z=c*u*g-d*f*h,this._w=c*u*h+d*f*g;break;case"ZXY":this._x=d*u*h-c*f*g,this._y=c*f*h+d*u*g,this._z=c*u*g+d*f*h,this._w=c*u*h-d*f*g;break;case"ZYX":this._x=d*u*h-c*f*g,this._y=c*f*h+d*u*g,this._z=c*u*g-d*f*h,this._w=c*u*h+d*f*g;break;case"YZX":this._x=d*u*h+c*f*g,this._y=c*f*h+d*u*g,this._z=c*u*g-d*f*h,this._w=c*u*h-d*f*g;break;case"XZY":this._x=d*u*h-c*f*g,this._y=c*f*h-d*u*g,this._z=c*u*g+d*f*h,this._w=c*u*h+d*f*g;break;default:It("Quaternion: .setFromEuler() encountered an unknown order: "+o)}return e===!0&&this._onChangeCallback(),this}setFromAxisAngle(t,e){let i=e/2,s=Math.sin(i);return this._x=t.x*s,this._y=t.y*s,this._z=t.z*s,this._w=Math.cos(i),this._onChangeCallback(),this}setFromRotationMatrix(t){let e=t.elements,i=e[0],s=e[4],r=e[8],o=e[1],a=e[5],l=e[9],c=e[2],u=e[6],h=e[10],d=i+a+h;if(d>0){let f=.5/Math.sqrt(d+1);this._w=.25/f,this._x=(u-l)*f,this._y=(r-c)*f,this._z=(o-s)*f}else if(i>a&&i>h){let f=2*Math.sqrt(1+i-a-h);this._w=(u-l)/f,this._x=.25*f,this._y=(s+o)/f,this._z=(r+c)/f}else if(a>h){let f=2*Math.sqrt(1+a-i-h);this._w=(r-c)/f,this._x=(s+o)/f,this._y=.25*f,this._z=(l+u)/f}else{let f=2*Math.sqrt(1+h-i-a);this._w=(o-s)/f,this._x=(r+c)/f,this._y=(l+u)/f,this._z=.25*f}return this._onChangeCallback(),this}setFromUnitVectors(t,e){let i=t.dot(e)+1;return i<1e-8?(i=0,Math.abs(t.x)>Math.abs(t.z)?(this._x=-t.y,this._y=t.x,this._z=0,this._w=i):(this._x=0,this._y=-t.z,this._z=t.y,this._w=i)):(this._x=t.y*e.z-t.z*e.y,this._y=t.z*e.x-t.x*e.z,this._z=t.x*e.y-t.y*e.x,this._w=i),this.normalize()}angleTo(t){return 2*Math.acos(Math.abs(Ht(this.dot(t),-1,1)))}rotateTowards(t,e){let i=this.angleTo(t);if(i===0)return this;let s=Math.min(1,e/i);return this.slerp(t,s),this}identity(){return this.set(0,0,0,1)}invert(){return this.conjugate()}conjugate(){return this._x*=-1,this._y*=-1,this._z*=-1,this._onChangeCallback(),this}dot(t){return this._x*t._x+this._y*t._y+this._z*t._z+this._w*t._w}lengthSq(){return this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w}length(){return Math.sqrt(this._x*this._x+this._y*this._y+this._z*this._z+this._w*this._w)}normalize(){let t=this.length();return t===0?(this._x=0,this._y=0,this._z=0,this._w=1):(t=1/t,this._x=this._x*t,this._y=this._y*t,this._z=this._z*t,this._w=this._w*t),this._onChangeCallback(),this}multiply(t){return this.multiplyQuaternions(this,t)}premultiply(t){return this.multiplyQuaternions(t,this)}multiplyQuaternions(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=e._x,l=e._y,c=e._z,u=e._w;return this._x=i*u+o*a+s*c-r*l,this._y=s*u+o*l+r*a-i*c,this._z=r*u+o*c+i*l-s*a,this._w=o*u-i*a-s*l-r*c,this._onChangeCallback(),this}slerp(t,e){let i=t._x,s=t._y,r=t._z,o=t._w,a=this.dot(t);a<0&&(i=-i,s=-s,r=-r,o=-o,a=-a);let l=1-e;if(a<.9995){let c=Math.acos(a),u=Math.sin(c);l=Math.sin(l*c)/u,e=Math.sin(e*c)/u,this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this._onChangeCallback()}else this._x=this._x*l+i*e,this._y=this._y*l+s*e,this._z=this._z*l+r*e,this._w=this._w*l+o*e,this.normalize();return this}slerpQuaternions(t,e,i){return this.copy(t).slerp(e,i)}random(){let t=2*Math.PI*Math.random(),e=2*Math.PI*Math.random(),i=Math.random(),s=Math.sqrt(1-i),r=Math.sqrt(i);return this.set(s*Math.sin(t),s*Math.cos(t),r*Math.sin(e),r*Math.cos(e))}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._w===this._w}fromArray(t,e=0){return this._x=t[e],this._y=t[e+1],this._z=t[e+2],this._w=t[e+3],this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._w,t}fromBufferAttribute(t,e){return this._x=t.getX(e),this._y=t.getY(e),this._z=t.getZ(e),this._w=t.getW(e),this._onChangeCallback(),this}toJSON(){return this.toArray()}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._w}},N=class{static{this.prototype.isVector3=!0}constructor(t=0,e=0,i=0){this.x=t,this.y=e,this.z=i}set(t,e,i){return i===void 0&&(i=this.z),this.x=t,this.y=e,this.z=i,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;default:throw new Error("THREE.Vector3: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;default:throw new Error("THREE.Vector3: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this}multiplyVectors(t,e){return this.x=t.x*e.x,this.y=t.y*e.y,this.z=t.z*e.z,this}applyEuler(t){return this.applyQuaternion(vm.setFromEuler(t))}applyAxisAngle(t,e){return this.applyQuaternion(vm.setFromAxisAngle(t,e))}applyMatrix3(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[3]*i+r[6]*s,this.y=r[1]*e+r[4]*i+r[7]*s,this.z=r[2]*e+r[5]*i+r[8]*s,this}applyNormalMatrix(t){return this.applyMatrix3(t).normalize()}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=t.elements,o=1/(r[3]*e+r[7]*i+r[11]*s+r[15]);return this.x=(r[0]*e+r[4]*i+r[8]*s+r[12])*o,this.y=(r[1]*e+r[5]*i+r[9]*s+r[13])*o,this.z=(r[2]*e+r[6]*i+r[10]*s+r[14])*o,this}applyQuaternion(t){let e=this.x,i=this.y,s=this.z,r=t.x,o=t.y,a=t.z,l=t.w,c=2*(o*s-a*i),u=2*(a*e-r*s),h=2*(r*i-o*e);return this.x=e+l*c+o*h-a*u,this.y=i+l*u+a*c-r*h,this.z=s+l*h+r*u-o*c,this}project(t){return this.applyMatrix4(t.matrixWorldInverse).applyMatrix4(t.projectionMatrix)}unproject(t){return this.applyMatrix4(t.projectionMatrixInverse).applyMatrix4(t.matrixWorld)}transformDirection(t){let e=this.x,i=this.y,s=this.z,r=t.elements;return this.x=r[0]*e+r[4]*i+r[8]*s,this.y=r[1]*e+r[5]*i+r[9]*s,this.z=r[2]*e+r[6]*i+r[10]*s,this.normalize()}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this}divideScalar(t){return this.multiplyScalar(1/t)}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this}clamp(t,e){return this.x=Ht(this.x,t.x,e.x),this.y=Ht(this.y,t.y,e.y),this.z=Ht(this.z,t.z,e.z),this}clampScalar(t,e){return this.x=Ht(this.x,t,e),this.y=Ht(this.y,t,e),this.z=Ht(this.z,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Ht(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this}cross(t){return this.crossVectors(this,t)}crossVectors(t,e){let i=t.x,s=t.y,r=t.z,o=e.x,a=e.y,l=e.z;return this.x=s*l-r*a,this.y=r*o-i*l,this.z=i*a-s*o,this}projectOnVector(t){let e=t.lengthSq();if(e===0)return this.set(0,0,0);let i=t.dot(this)/e;return this.copy(t).multiplyScalar(i)}projectOnPlane(t){return Oh.copy(this).projectOnVector(t),this.sub(Oh)}reflect(t){return this.sub(Oh.copy(t).multiplyScalar(2*this.dot(t)))}angleTo(t){let e=Math.sqrt(this.lengthSq()*t.lengthSq());if(e===0)return Math.PI/2;let i=this.dot(t)/e;return Math.acos(Ht(i,-1,1))}distanceTo(t){return Math.sqrt(this.distanceToSquared(t))}distanceToSquared(t){let e=this.x-t.x,i=this.y-t.y,s=this.z-t.z;return e*e+i*i+s*s}manhattanDistanceTo(t){return Math.abs(this.x-t.x)+Math.abs(this.y-t.y)+Math.abs(this.z-t.z)}setFromSpherical(t){return this.setFromSphericalCoords(t.radius,t.phi,t.theta)}setFromSphericalCoords(t,e,i){let s=Math.sin(e)*t;return this.x=s*Math.sin(i),this.y=Math.cos(e)*t,this.z=s*Math.cos(i),this}setFromCylindrical(t){return this.setFromCylindricalCoords(t.radius,t.theta,t.y)}setFromCylindricalCoords(t,e,i){return this.x=t*Math.sin(e),this.y=i,this.z=t*Math.cos(e),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this}setFromMatrixScale(t){let e=this.setFromMatrixColumn(t,0).length(),i=this.setFromMatrixColumn(t,1).length(),s=this.setFromMatrixColumn(t,2).length();return this.x=e,this.y=i,this.z=s,this}setFromMatrixColumn(t,e){return this.fromArray(t.elements,e*4)}setFromMatrix3Column(t,e){return this.fromArray(t.elements,e*3)}setFromEuler(t){return this.x=t._x,this.y=t._y,this.z=t._z,this}setFromColor(t){return this.x=t.r,this.y=t.g,this.z=t.b,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this}randomDirection(){let t=Math.random()*Math.PI*2,e=Math.random()*2-1,i=Math.sqrt(1-e*e);return this.x=i*Math.cos(t),this.y=e,this.z=i*Math.sin(t),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z}},Oh=new N,vm=new We,kt=class{static{this.prototype.isMatrix3=!0}constructor(t,e,i,s,r,o,a,l,c){this.elements=[1,0,0,0,1,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,c)}set(t,e,i,s,r,o,a,l,c){let u=this.elements;return u[0]=t,u[1]=s,u[2]=a,u[3]=e,u[4]=r,u[5]=l,u[6]=i,u[7]=o,u[8]=c,this}identity(){return this.set(1,0,0,0,1,0,0,0,1),this}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],this}extractBasis(t,e,i){return t.setFromMatrix3Column(this,0),e.setFromMatrix3Column(this,1),i.setFromMatrix3Column(this,2),this}setFromMatrix4(t){let e=t.elements;return this.set(e[0],e[4],e[8],e[1],e[5],e[9],e[2],e[6],e[10]),this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[3],l=i[6],c=i[1],u=i[4],h=i[7],d=i[2],f=i[5],g=i[8],v=s[0],_=s[3],m=s[6],y=s[1],M=s[4],b=s[7],E=s[2],A=s[5],x=s[8];return r[0]=o*v+a*y+l*E,r[3]=o*_+a*M+l*A,r[6]=o*m+a*b+l*x,r[1]=c*v+u*y+h*E,r[4]=c*_+u*M+h*A,r[7]=c*m+u*b+h*x,r[2]=d*v+f*y+g*E,r[5]=d*_+f*M+g*A,r[8]=d*m+f*b+g*x,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[3]*=t,e[6]*=t,e[1]*=t,e[4]*=t,e[7]*=t,e[2]*=t,e[5]*=t,e[8]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8];return e*o*u-e*a*c-i*r*u+i*a*l+s*r*c-s*o*l}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8],h=u*o-a*c,d=a*l-u*r,f=c*r-o*l,g=e*h+i*d+s*f;if(g===0)return this.set(0,0,0,0,0,0,0,0,0);let v=1/g;return t[0]=h*v,t[1]=(s*c-u*i)*v,t[2]=(a*i-s*o)*v,t[3]=d*v,t[4]=(u*e-s*l)*v,t[5]=(s*r-a*e)*v,t[6]=f*v,t[7]=(i*l-c*e)*v,t[8]=(o*e-i*r)*v,this}transpose(){let t,e=this.elements;return t=e[1],e[1]=e[3],e[3]=t,t=e[2],e[2]=e[6],e[6]=t,t=e[5],e[5]=e[7],e[7]=t,this}getNormalMatrix(t){return this.setFromMatrix4(t).invert().transpose()}transposeIntoArray(t){let e=this.elements;return t[0]=e[0],t[1]=e[3],t[2]=e[6],t[3]=e[1],t[4]=e[4],t[5]=e[7],t[6]=e[2],t[7]=e[5],t[8]=e[8],this}setUvTransform(t,e,i,s,r,o,a){let l=Math.cos(r),c=Math.sin(r);return this.set(i*l,i*c,-i*(l*o+c*a)+o+t,-s*c,s*l,-s*(-c*o+l*a)+a+e,0,0,1),this}scale(t,e){return Do("Matrix3: .scale() is deprecated. Use .makeScale() instead."),this.premultiply(kh.makeScale(t,e)),this}rotate(t){return Do("Matrix3: .rotate() is deprecated. Use .makeRotation() instead."),this.premultiply(kh.makeRotation(-t)),this}translate(t,e){return Do("Matrix3: .translate() is deprecated. Use .makeTranslation() instead."),this.premultiply(kh.makeTranslation(t,e)),this}makeTranslation(t,e){return t.isVector2?this.set(1,0,t.x,0,1,t.y,0,0,1):this.set(1,0,t,0,1,e,0,0,1),this}makeRotation(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,i,e,0,0,0,1),this}makeScale(t,e){return this.set(t,0,0,0,e,0,0,0,1),this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<9;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<9;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t}clone(){return new this.constructor().fromArray(this.elements)}},kh=new kt,ym=new kt().set(.4123908,.3575843,.1804808,.212639,.7151687,.0721923,.0193308,.1191948,.9505322),xm=new kt().set(3.2409699,-1.5373832,-.4986108,-.9692436,1.8759675,.0415551,.0556301,-.203977,1.0569715);function wy(){let n={enabled:!0,workingColorSpace:ko,spaces:{},convert:function(s,r,o){return this.enabled===!1||r===o||!r||!o||(this.spaces[r].transfer===ce&&(s.r=Di(s.r),s.g=Di(s.g),s.b=Di(s.b)),this.spaces[r].primaries!==this.spaces[o].primaries&&(s.applyMatrix3(this.spaces[r].toXYZ),s.applyMatrix3(this.spaces[o].fromXYZ)),this.spaces[o].transfer===ce&&(s.r=Ar(s.r),s.g=Ar(s.g),s.b=Ar(s.b))),s},workingToColorSpace:function(s,r){return this.convert(s,this.workingColorSpace,r)},colorSpaceToWorking:function(s,r){return this.convert(s,r,this.workingColorSpace)},getPrimaries:function(s){return this.spaces[s].primaries},getTransfer:function(s){return s===Bi?Bo:this.spaces[s].transfer},getToneMappingMode:function(s){return this.spaces[s].outputColorSpaceConfig.toneMappingMode||"standard"},getLuminanceCoefficients:function(s,r=this.workingColorSpace){return s.fromArray(this.spaces[r].luminanceCoefficients)},define:function(s){Object.assign(this.spaces,s)},_getMatrix:function(s,r,o){return s.copy(this.spaces[o].fromXYZ).multiply(this.spaces[r].toXYZ)},_getDrawingBufferColorSpace:function(s){return this.spaces[s].outputColorSpaceConfig.drawingBufferColorSpace},_getUnpackColorSpace:function(s=this.workingColorSpace){return this.spaces[s].workingColorSpaceConfig.unpackColorSpace}},t=[.64,.33,.3,.6,.15,.06],e=[.2126,.7152,.0722],i=[.3127,.329];return n.define({[ko]:{primaries:t,whitePoint:i,transfer:Bo,toXYZ:ym,fromXYZ:xm,luminanceCoefficients:e,workingColorSpaceConfig:{unpackColorSpace:Rn},outputColorSpaceConfig:{drawingBufferColorSpace:Rn}},[Rn]:{primaries:t,whitePoint:i,transfer:ce,toXYZ:ym,fromXYZ:xm,luminanceCoefficients:e,outputColorSpaceConfig:{drawingBufferColorSpace:Rn}}}),n}var Kt=wy();function Di(n){return n<.04045?n*.0773993808:Math.pow(n*.9478672986+.0521327014,2.4)}function Ar(n){return n<.0031308?n*12.92:1.055*Math.pow(n,.41666)-.055}var fr,rc=class{static getDataURL(t,e="image/png"){if(/^data:/i.test(t.src)||typeof HTMLCanvasElement>"u")return t.src;let i;if(t instanceof HTMLCanvasElement)i=t;else{fr===void 0&&(fr=zo("canvas")),fr.width=t.width,fr.height=t.height;let s=fr.getContext("2d");t instanceof ImageData?s.putImageData(t,0,0):s.drawImage(t,0,0,t.width,t.height),i=fr}return i.toDataURL(e)}static sRGBToLinear(t){if(typeof HTMLImageElement<"u"&&t instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&t instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&t instanceof ImageBitmap){let e=zo("canvas");e.width=t.width,e.height=t.height;let i=e.getContext("2d");i.drawImage(t,0,0,t.width,t.height);let s=i.getImageData(0,0,t.width,t.height),r=s.data;for(let o=0;o<r.length;o++)r[o]=Di(r[o]/255)*255;return i.putImageData(s,0,0),e}else if(t.data){let e=t.data.slice(0);for(let i=0;i<e.length;i++)e instanceof Uint8Array||e instanceof Uint8ClampedArray?e[i]=Math.floor(Di(e[i]/255)*255):e[i]=Di(e[i]);return{data:e,width:t.width,height:t.height}}else return It("ImageUtils.sRGBToLinear(): Unsupported image type. No color space conversion applied."),t}},Ty=0,Dr=class{constructor(t=null){this.isTextureSource=!0,Object.defineProperty(this,"id",{value:Ty++}),this.uuid=zs(),this.data=t,this.dataReady=!0,this.version=0}getSize(t){let e=this.data;return typeof HTMLVideoElement<"u"&&e instanceof HTMLVideoElement?t.set(e.videoWidth,e.videoHeight,0):typeof VideoFrame<"u"&&e instanceof VideoFrame?t.set(e.displayWidth,e.displayHeight,0):e!==null?t.set(e.width||0,e.height||0,e.depth||0):t.set(0,0,0),t}set needsUpdate(t){t===!0&&this.version++}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.images[this.uuid]!==void 0)return t.images[this.uuid];let i={uuid:this.uuid,url:""},s=this.data;if(s!==null){let r;if(Array.isArray(s)){r=[];for(let o=0,a=s.length;o<a;o++)s[o].isDataTexture?r.push(Bh(s[o].image)):r.push(Bh(s[o]))}else r=Bh(s);i.url=r}return e||(t.images[this.uuid]=i),i}};function Bh(n){return typeof HTMLImageElement<"u"&&n instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&n instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&n instanceof ImageBitmap?rc.getDataURL(n):n.data?{data:Array.from(n.data),width:n.width,height:n.height,type:n.data.constructor.name}:(It("Texture: Unable to serialize Texture."),{})}var Ay=0,zh=new N,bn=class n extends ei{constructor(t=n.DEFAULT_IMAGE,e=n.DEFAULT_MAPPING,i=li,s=li,r=_n,o=Oi,a=si,l=Sn,c=n.DEFAULT_ANISOTROPY,u=Bi){super(),this.isTexture=!0,Object.defineProperty(this,"id",{value:Ay++}),this.uuid=zs(),this.name="",this.source=new Dr(t),this.mipmaps=[],this.mapping=e,this.channel=0,this.wrapS=i,this.wrapT=s,this.magFilter=r,this.minFilter=o,this.anisotropy=c,this.format=a,this.internalFormat=null,this.type=l,this.offset=new rt(0,0),this.repeat=new rt(1,1),this.center=new rt(0,0),this.rotation=0,this.matrixAutoUpdate=!0,this.matrix=new kt,this.generateMipmaps=!0,this.mipmapsAutoUpdate=!0,this.premultiplyAlpha=!1,this.flipY=!0,this.unpackAlignment=4,this.colorSpace=u,this.userData={},this.updateRanges=[],this.version=0,this.onUpdate=null,this.renderTarget=null,this.isRenderTargetTexture=!1,this.isArrayTexture=!!(t&&t.depth&&t.depth>1),this.pmremVersion=0,this.isPMREMTexture=!1,this.normalized=!1}get width(){return this.source.getSize(zh).x}get height(){return this.source.getSize(zh).y}get depth(){return this.source.getSize(zh).z}get image(){return this.source.data}set image(t){this.source.data=t}updateMatrix(){this.matrix.setUvTransform(this.offset.x,this.offset.y,this.repeat.x,this.repeat.y,this.rotation,this.center.x,this.center.y)}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}clone(){return new this.constructor().copy(this)}copy(t){return this.name=t.name,this.source=t.source,this.mipmaps=t.mipmaps.slice(0),this.mapping=t.mapping,this.channel=t.channel,this.wrapS=t.wrapS,this.wrapT=t.wrapT,this.magFilter=t.magFilter,this.minFilter=t.minFilter,this.anisotropy=t.anisotropy,this.format=t.format,this.internalFormat=t.internalFormat,this.type=t.type,this.normalized=t.normalized,this.offset.copy(t.offset),this.repeat.copy(t.repeat),this.center.copy(t.center),this.rotation=t.rotation,this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrix.copy(t.matrix),this.generateMipmaps=t.generateMipmaps,this.mipmapsAutoUpdate=t.mipmapsAutoUpdate,this.premultiplyAlpha=t.premultiplyAlpha,this.flipY=t.flipY,this.unpackAlignment=t.unpackAlignment,this.colorSpace=t.colorSpace,this.renderTarget=t.renderTarget,this.isRenderTargetTexture=t.isRenderTargetTexture,this.isPMREMTexture=t.isPMREMTexture,this.isArrayTexture=t.isArrayTexture,this.userData=JSON.parse(JSON.stringify(t.userData)),this.needsUpdate=!0,this}setValues(t){for(let e in t){let i=t[e];if(i===void 0){It(`Texture.setValues(): parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){It(`Texture.setValues(): property '${e}' does not exist.`);continue}s&&i&&s.isVector2&&i.isVector2||s&&i&&s.isVector3&&i.isVector3||s&&i&&s.isMatrix3&&i.isMatrix3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";if(!e&&t.textures[this.uuid]!==void 0)return t.textures[this.uuid];let i={metadata:{version:4.7,type:"Texture",generator:"Texture.toJSON"},uuid:this.uuid,name:this.name,image:this.source.toJSON(t).uuid,mapping:this.mapping,channel:this.channel,repeat:[this.repeat.x,this.repeat.y],offset:[this.offset.x,this.offset.y],center:[this.center.x,this.center.y],rotation:this.rotation,wrap:[this.wrapS,this.wrapT],format:this.format,internalFormat:this.internalFormat,type:this.type,normalized:this.normalized,colorSpace:this.colorSpace,minFilter:this.minFilter,magFilter:this.magFilter,anisotropy:this.anisotropy,flipY:this.flipY,generateMipmaps:this.generateMipmaps,mipmapsAutoUpdate:this.mipmapsAutoUpdate,premultiplyAlpha:this.premultiplyAlpha,unpackAlignment:this.unpackAlignment};return Object.keys(this.userData).length>0&&(i.userData=this.userData),e||(t.textures[this.uuid]=i),i}dispose(){this.dispatchEvent({type:"dispose"})}transformUv(t){if(this.mapping!==If)return t;if(t.applyMatrix3(this.matrix),t.x<0||t.x>1)switch(this.wrapS){case nc:t.x=t.x-Math.floor(t.x);break;case li:t.x=t.x<0?0:1;break;case ic:Math.abs(Math.floor(t.x)%2)===1?t.x=Math.ceil(t.x)-t.x:t.x=t.x-Math.floor(t.x);break}if(t.y<0||t.y>1)switch(this.wrapT){case nc:t.y=t.y-Math.floor(t.y);break;case li:t.y=t.y<0?0:1;break;case ic:Math.abs(Math.floor(t.y)%2)===1?t.y=Math.ceil(t.y)-t.y:t.y=t.y-Math.floor(t.y);break}return this.flipY&&(t.y=1-t.y),t}set needsUpdate(t){t===!0&&(this.version++,this.source.needsUpdate=!0)}set needsPMREMUpdate(t){t===!0&&this.pmremVersion++}};bn.DEFAULT_IMAGE=null;bn.DEFAULT_MAPPING=If;bn.DEFAULT_ANISOTROPY=1;var Te=class{static{this.prototype.isVector4=!0}constructor(t=0,e=0,i=0,s=1){this.x=t,this.y=e,this.z=i,this.w=s}get width(){return this.z}set width(t){this.z=t}get height(){return this.w}set height(t){this.w=t}set(t,e,i,s){return this.x=t,this.y=e,this.z=i,this.w=s,this}setScalar(t){return this.x=t,this.y=t,this.z=t,this.w=t,this}setX(t){return this.x=t,this}setY(t){return this.y=t,this}setZ(t){return this.z=t,this}setW(t){return this.w=t,this}setComponent(t,e){switch(t){case 0:this.x=e;break;case 1:this.y=e;break;case 2:this.z=e;break;case 3:this.w=e;break;default:throw new Error("THREE.Vector4: index is out of range: "+t)}return this}getComponent(t){switch(t){case 0:return this.x;case 1:return this.y;case 2:return this.z;case 3:return this.w;default:throw new Error("THREE.Vector4: index is out of range: "+t)}}clone(){return new this.constructor(this.x,this.y,this.z,this.w)}copy(t){return this.x=t.x,this.y=t.y,this.z=t.z,this.w=t.w!==void 0?t.w:1,this}add(t){return this.x+=t.x,this.y+=t.y,this.z+=t.z,this.w+=t.w,this}addScalar(t){return this.x+=t,this.y+=t,this.z+=t,this.w+=t,this}addVectors(t,e){return this.x=t.x+e.x,this.y=t.y+e.y,this.z=t.z+e.z,this.w=t.w+e.w,this}addScaledVector(t,e){return this.x+=t.x*e,this.y+=t.y*e,this.z+=t.z*e,this.w+=t.w*e,this}sub(t){return this.x-=t.x,this.y-=t.y,this.z-=t.z,this.w-=t.w,this}subScalar(t){return this.x-=t,this.y-=t,this.z-=t,this.w-=t,this}subVectors(t,e){return this.x=t.x-e.x,this.y=t.y-e.y,this.z=t.z-e.z,this.w=t.w-e.w,this}multiply(t){return this.x*=t.x,this.y*=t.y,this.z*=t.z,this.w*=t.w,this}multiplyScalar(t){return this.x*=t,this.y*=t,this.z*=t,this.w*=t,this}applyMatrix4(t){let e=this.x,i=this.y,s=this.z,r=this.w,o=t.elements;return this.x=o[0]*e+o[4]*i+o[8]*s+o[12]*r,this.y=o[1]*e+o[5]*i+o[9]*s+o[13]*r,this.z=o[2]*e+o[6]*i+o[10]*s+o[14]*r,this.w=o[3]*e+o[7]*i+o[11]*s+o[15]*r,this}divide(t){return this.x/=t.x,this.y/=t.y,this.z/=t.z,this.w/=t.w,this}divideScalar(t){return this.multiplyScalar(1/t)}setAxisAngleFromQuaternion(t){this.w=2*Math.acos(t.w);let e=Math.sqrt(1-t.w*t.w);return e<1e-4?(this.x=1,this.y=0,this.z=0):(this.x=t.x/e,this.y=t.y/e,this.z=t.z/e),this}setAxisAngleFromRotationMatrix(t){let e,i,s,r,l=t.elements,c=l[0],u=l[4],h=l[8],d=l[1],f=l[5],g=l[9],v=l[2],_=l[6],m=l[10];if(Math.abs(u-d)<.01&&Math.abs(h-v)<.01&&Math.abs(g-_)<.01){if(Math.abs(u+d)<.1&&Math.abs(h+v)<.1&&Math.abs(g+_)<.1&&Math.abs(c+f+m-3)<.1)return this.set(1,0,0,0),this;e=Math.PI;let M=(c+1)/2,b=(f+1)/2,E=(m+1)/2,A=(u+d)/4,x=(h+v)/4,T=(g+_)/4;return M>b&&M>E?M<.01?(i=0,s=.707106781,r=.707106781):(i=Math.sqrt(M),s=A/i,r=x/i):b>E?b<.01?(i=.707106781,s=0,r=.707106781):(s=Math.sqrt(b),i=A/s,r=T/s):E<.01?(i=.707106781,s=.707106781,r=0):(r=Math.sqrt(E),i=x/r,s=T/r),this.set(i,s,r,e),this}let y=Math.sqrt((_-g)*(_-g)+(h-v)*(h-v)+(d-u)*(d-u));return Math.abs(y)<.001&&(y=1),this.x=(_-g)/y,this.y=(h-v)/y,this.z=(d-u)/y,this.w=Math.acos((c+f+m-1)/2),this}setFromMatrixPosition(t){let e=t.elements;return this.x=e[12],this.y=e[13],this.z=e[14],this.w=e[15],this}min(t){return this.x=Math.min(this.x,t.x),this.y=Math.min(this.y,t.y),this.z=Math.min(this.z,t.z),this.w=Math.min(this.w,t.w),this}max(t){return this.x=Math.max(this.x,t.x),this.y=Math.max(this.y,t.y),this.z=Math.max(this.z,t.z),this.w=Math.max(this.w,t.w),this}clamp(t,e){return this.x=Ht(this.x,t.x,e.x),this.y=Ht(this.y,t.y,e.y),this.z=Ht(this.z,t.z,e.z),this.w=Ht(this.w,t.w,e.w),this}clampScalar(t,e){return this.x=Ht(this.x,t,e),this.y=Ht(this.y,t,e),this.z=Ht(this.z,t,e),this.w=Ht(this.w,t,e),this}clampLength(t,e){let i=this.length();return this.divideScalar(i||1).multiplyScalar(Ht(i,t,e))}floor(){return this.x=Math.floor(this.x),this.y=Math.floor(this.y),this.z=Math.floor(this.z),this.w=Math.floor(this.w),this}ceil(){return this.x=Math.ceil(this.x),this.y=Math.ceil(this.y),this.z=Math.ceil(this.z),this.w=Math.ceil(this.w),this}round(){return this.x=Math.round(this.x),this.y=Math.round(this.y),this.z=Math.round(this.z),this.w=Math.round(this.w),this}roundToZero(){return this.x=Math.trunc(this.x),this.y=Math.trunc(this.y),this.z=Math.trunc(this.z),this.w=Math.trunc(this.w),this}negate(){return this.x=-this.x,this.y=-this.y,this.z=-this.z,this.w=-this.w,this}dot(t){return this.x*t.x+this.y*t.y+this.z*t.z+this.w*t.w}lengthSq(){return this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w}length(){return Math.sqrt(this.x*this.x+this.y*this.y+this.z*this.z+this.w*this.w)}manhattanLength(){return Math.abs(this.x)+Math.abs(this.y)+Math.abs(this.z)+Math.abs(this.w)}normalize(){return this.divideScalar(this.length()||1)}setLength(t){return this.normalize().multiplyScalar(t)}lerp(t,e){return this.x+=(t.x-this.x)*e,this.y+=(t.y-this.y)*e,this.z+=(t.z-this.z)*e,this.w+=(t.w-this.w)*e,this}lerpVectors(t,e,i){return this.x=t.x+(e.x-t.x)*i,this.y=t.y+(e.y-t.y)*i,this.z=t.z+(e.z-t.z)*i,this.w=t.w+(e.w-t.w)*i,this}equals(t){return t.x===this.x&&t.y===this.y&&t.z===this.z&&t.w===this.w}fromArray(t,e=0){return this.x=t[e],this.y=t[e+1],this.z=t[e+2],this.w=t[e+3],this}toArray(t=[],e=0){return t[e]=this.x,t[e+1]=this.y,t[e+2]=this.z,t[e+3]=this.w,t}fromBufferAttribute(t,e){return this.x=t.getX(e),this.y=t.getY(e),this.z=t.getZ(e),this.w=t.getW(e),this}random(){return this.x=Math.random(),this.y=Math.random(),this.z=Math.random(),this.w=Math.random(),this}*[Symbol.iterator](){yield this.x,yield this.y,yield this.z,yield this.w}},oc=class extends ei{constructor(t=1,e=1,i={}){super(),i=Object.assign({generateMipmaps:!1,internalFormat:null,minFilter:_n,depthBuffer:!0,stencilBuffer:!1,resolveColorBuffer:!0,resolveDepthBuffer:!0,resolveStencilBuffer:!0,storeMultisampledColorBuffer:!0,storeMultisampledDepthBuffer:!0,storeMultisampledStencilBuffer:!0,depthTexture:null,samples:0,count:1,depth:1,multiview:!1,useArrayDepthTexture:!1},i),this.isRenderTarget=!0,this.width=t,this.height=e,this.depth=i.depth,this.scissor=new Te(0,0,t,e),this.scissorTest=!1,this.viewport=new Te(0,0,t,e),this.textures=[];let s=i.count;for(let r=0;r<s;r++)this.textures[r]=new bn({width:t,height:e,depth:i.depth}),this.textures[r].isRenderTargetTexture=!0,this.textures[r].renderTarget=this;this._setTextureOptions(i),this.depthBuffer=i.depthBuffer,this.stencilBuffer=i.stencilBuffer,this.resolveColorBuffer=i.resolveColorBuffer,this.resolveDepthBuffer=i.resolveDepthBuffer,this.resolveStencilBuffer=i.resolveStencilBuffer,this.storeMultisampledColorBuffer=i.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=i.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=i.storeMultisampledStencilBuffer,this._depthTexture=null,this.depthTexture=i.depthTexture,this.samples=i.samples,this.multiview=i.multiview,this.useArrayDepthTexture=i.useArrayDepthTexture}_setTextureOptions(t={}){let e={minFilter:_n,generateMipmaps:!1,flipY:!1,internalFormat:null};t.mapping!==void 0&&(e.mapping=t.mapping),t.wrapS!==void 0&&(e.wrapS=t.wrapS),t.wrapT!==void 0&&(e.wrapT=t.wrapT),t.wrapR!==void 0&&(e.wrapR=t.wrapR),t.magFilter!==void 0&&(e.magFilter=t.magFilter),t.minFilter!==void 0&&(e.minFilter=t.minFilter),t.format!==void 0&&(e.format=t.format),t.type!==void 0&&(e.type=t.type),t.anisotropy!==void 0&&(e.anisotropy=t.anisotropy),t.colorSpace!==void 0&&(e.colorSpace=t.colorSpace),t.flipY!==void 0&&(e.flipY=t.flipY),t.generateMipmaps!==void 0&&(e.generateMipmaps=t.generateMipmaps),t.mipmapsAutoUpdate!==void 0&&(e.mipmapsAutoUpdate=t.mipmapsAutoUpdate),t.internalFormat!==void 0&&(e.internalFormat=t.internalFormat);for(let i=0;i<this.textures.length;i++)this.textures[i].setValues(e)}get texture(){return this.textures[0]}set texture(t){this.textures[0]=t}set depthTexture(t){this._depthTexture!==null&&this._depthTexture.renderTarget===this&&(this._depthTexture.renderTarget=null),t!==null&&t.renderTarget===null&&(t.renderTarget=this),this._depthTexture=t}get depthTexture(){return this._depthTexture}setSize(t,e,i=1){if(this.width!==t||this.height!==e||this.depth!==i){this.width=t,this.height=e,this.depth=i;for(let s=0,r=this.textures.length;s<r;s++)this.textures[s].image.width=t,this.textures[s].image.height=e,this.textures[s].image.depth=i,this.textures[s].isData3DTexture!==!0&&(this.textures[s].isArrayTexture=this.textures[s].image.depth>1);this.dispose()}this.viewport.set(0,0,t,e),this.scissor.set(0,0,t,e)}clone(){return new this.constructor().copy(this)}copy(t){this.width=t.width,this.height=t.height,this.depth=t.depth,this.scissor.copy(t.scissor),this.scissorTest=t.scissorTest,this.viewport.copy(t.viewport),this.textures.length=0;for(let e=0,i=t.textures.length;e<i;e++){this.textures[e]=t.textures[e].clone(),this.textures[e].isRenderTargetTexture=!0,this.textures[e].renderTarget=this;let s=Object.assign({},t.textures[e].image);this.textures[e].source=new Dr(s)}if(this.depthBuffer=t.depthBuffer,this.stencilBuffer=t.stencilBuffer,this.resolveColorBuffer=t.resolveColorBuffer,this.resolveDepthBuffer=t.resolveDepthBuffer,this.resolveStencilBuffer=t.resolveStencilBuffer,this.storeMultisampledColorBuffer=t.storeMultisampledColorBuffer,this.storeMultisampledDepthBuffer=t.storeMultisampledDepthBuffer,this.storeMultisampledStencilBuffer=t.storeMultisampledStencilBuffer,t.depthTexture!==null)if(t.depthTexture.renderTarget===t){let e=t.depthTexture.clone();e.renderTarget=null,this.depthTexture=e}else this.depthTexture=t.depthTexture;else this.depthTexture=null;return this.samples=t.samples,this.multiview=t.multiview,this.useArrayDepthTexture=t.useArrayDepthTexture,this}dispose(){this.dispatchEvent({type:"dispose"})}},In=class extends oc{constructor(t=1,e=1,i={}){super(t,e,i),this.isWebGLRenderTarget=!0}},Vo=class extends bn{constructor(t=null,e=1,i=1,s=1){super(null),this.isDataArrayTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=je,this.minFilter=je,this.wrapR=li,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1,this.layerUpdates=new Set}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}addLayerUpdate(t){this.layerUpdates.add(t)}clearLayerUpdates(){this.layerUpdates.clear()}};var ac=class extends bn{constructor(t=null,e=1,i=1,s=1){super(null),this.isData3DTexture=!0,this.image={data:t,width:e,height:i,depth:s},this.magFilter=je,this.minFilter=je,this.wrapR=li,this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}copy(t){return super.copy(t),this.wrapR=t.wrapR,this}};var ee=class n{static{this.prototype.isMatrix4=!0}constructor(t,e,i,s,r,o,a,l,c,u,h,d,f,g,v,_){this.elements=[1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1],t!==void 0&&this.set(t,e,i,s,r,o,a,l,c,u,h,d,f,g,v,_)}set(t,e,i,s,r,o,a,l,c,u,h,d,f,g,v,_){let m=this.elements;return m[0]=t,m[4]=e,m[8]=i,m[12]=s,m[1]=r,m[5]=o,m[9]=a,m[13]=l,m[2]=c,m[6]=u,m[10]=h,m[14]=d,m[3]=f,m[7]=g,m[11]=v,m[15]=_,this}identity(){return this.set(1,0,0,0,0,1,0,0,0,0,1,0,0,0,0,1),this}clone(){return new n().fromArray(this.elements)}copy(t){let e=this.elements,i=t.elements;return e[0]=i[0],e[1]=i[1],e[2]=i[2],e[3]=i[3],e[4]=i[4],e[5]=i[5],e[6]=i[6],e[7]=i[7],e[8]=i[8],e[9]=i[9],e[10]=i[10],e[11]=i[11],e[12]=i[12],e[13]=i[13],e[14]=i[14],e[15]=i[15],this}copyPosition(t){let e=this.elements,i=t.elements;return e[12]=i[12],e[13]=i[13],e[14]=i[14],this}setFromMatrix3(t){let e=t.elements;return this.set(e[0],e[3],e[6],0,e[1],e[4],e[7],0,e[2],e[5],e[8],0,0,0,0,1),this}extractBasis(t,e,i){return this.determinantAffine()===0?(t.set(1,0,0),e.set(0,1,0),i.set(0,0,1),this):(t.setFromMatrixColumn(this,0),e.setFromMatrixColumn(this,1),i.setFromMatrixColumn(this,2),this)}makeBasis(t,e,i){return this.set(t.x,e.x,i.x,0,t.y,e.y,i.y,0,t.z,e.z,i.z,0,0,0,0,1),this}extractRotation(t){if(t.determinantAffine()===0)return this.identity();let e=this.elements,i=t.elements,s=1/dr.setFromMatrixColumn(t,0).length(),r=1/dr.setFromMatrixColumn(t,1).length(),o=1/dr.setFromMatrixColumn(t,2).length();return e[0]=i[0]*s,e[1]=i[1]*s,e[2]=i[2]*s,e[3]=0,e[4]=i[4]*r,e[5]=i[5]*r,e[6]=i[6]*r,e[7]=0,e[8]=i[8]*o,e[9]=i[9]*o,e[10]=i[10]*o,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromEuler(t){let e=this.elements,i=t.x,s=t.y,r=t.z,o=Math.cos(i),a=Math.sin(i),l=Math.cos(s),c=Math.sin(s),u=Math.cos(r),h=Math.sin(r);if(t.order==="XYZ"){let d=o*u,f=o*h,g=a*u,v=a*h;e[0]=l*u,e[4]=-l*h,e[8]=c,e[1]=f+g*c,e[5]=d-v*c,e[9]=-a*l,e[2]=v-d*c,e[6]=g+f*c,e[10]=o*l}else if(t.order==="YXZ"){let d=l*u,f=l*h,g=c*u,v=c*h;e[0]=d+v*a,e[4]=g*a-f,e[8]=o*c,e[1]=o*h,e[5]=o*u,e[9]=-a,e[2]=f*a-g,e[6]=v+d*a,e[10]=o*l}else if(t.order==="ZXY"){let d=l*u,f=l*h,g=c*u,v=c*h;e[0]=d-v*a,e[4]=-o*h,e[8]=g+f*a,e[1]=f+g*a,e[5]=o*u,e[9]=v-d*a,e[2]=-o*c,e[6]=a,e[10]=o*l}else if(t.order==="ZYX"){let d=o*u,f=o*h,g=a*u,v=a*h;e[0]=l*u,e[4]=g*c-f,e[8]=d*c+v,e[1]=l*h,e[5]=v*c+d,e[9]=f*c-g,e[2]=-c,e[6]=a*l,e[10]=o*l}else if(t.order==="YZX"){let d=o*l,f=o*c,g=a*l,v=a*c;e[0]=l*u,e[4]=v-d*h,e[8]=g*h+f,e[1]=h,e[5]=o*u,e[9]=-a*u,e[2]=-c*u,e[6]=f*h+g,e[10]=d-v*h}else if(t.order==="XZY"){let d=o*l,f=o*c,g=a*l,v=a*c;e[0]=l*u,e[4]=-h,e[8]=c*u,e[1]=d*h+v,e[5]=o*u,e[9]=f*h-g,e[2]=g*h-f,e[6]=a*u,e[10]=v*h+d}return e[3]=0,e[7]=0,e[11]=0,e[12]=0,e[13]=0,e[14]=0,e[15]=1,this}makeRotationFromQuaternion(t){return this.compose(Ey,t,Cy)}lookAt(t,e,i){let s=this.elements;return En.subVectors(t,e),En.lengthSq()===0&&(En.z=1),En.normalize(),Yi.crossVectors(i,En),Yi.lengthSq()===0&&(Math.abs(i.z)===1?En.x+=1e-4:En.z+=1e-4,En.normalize(),Yi.crossVectors(i,En)),Yi.normalize(),xl.crossVectors(En,Yi),s[0]=Yi.x,s[4]=xl.x,s[8]=En.x,s[1]=Yi.y,s[5]=xl.y,s[9]=En.y,s[2]=Yi.z,s[6]=xl.z,s[10]=En.z,this}multiply(t){return this.multiplyMatrices(this,t)}premultiply(t){return this.multiplyMatrices(t,this)}multiplyMatrices(t,e){let i=t.elements,s=e.elements,r=this.elements,o=i[0],a=i[4],l=i[8],c=i[12],u=i[1],h=i[5],d=i[9],f=i[13],g=i[2],v=i[6],_=i[10],m=i[14],y=i[3],M=i[7],b=i[11],E=i[15],A=s[0],x=s[4],T=s[8],D=s[12],R=s[1],P=s[5],F=s[9],B=s[13],I=s[2],W=s[6],X=s[10],k=s[14],Q=s[3],G=s[7],tt=s[11],et=s[15];return r[0]=o*A+a*R+l*I+c*Q,r[4]=o*x+a*P+l*W+c*G,r[8]=o*T+a*F+l*X+c*tt,r[12]=o*D+a*B+l*k+c*et,r[1]=u*A+h*R+d*I+f*Q,r[5]=u*x+h*P+d*W+f*G,r[9]=u*T+h*F+d*X+f*tt,r[13]=u*D+h*B+d*k+f*et,r[2]=g*A+v*R+_*I+m*Q,r[6]=g*x+v*P+_*W+m*G,r[10]=g*T+v*F+_*X+m*tt,r[14]=g*D+v*B+_*k+m*et,r[3]=y*A+M*R+b*I+E*Q,r[7]=y*x+M*P+b*W+E*G,r[11]=y*T+M*F+b*X+E*tt,r[15]=y*D+M*B+b*k+E*et,this}multiplyScalar(t){let e=this.elements;return e[0]*=t,e[4]*=t,e[8]*=t,e[12]*=t,e[1]*=t,e[5]*=t,e[9]*=t,e[13]*=t,e[2]*=t,e[6]*=t,e[10]*=t,e[14]*=t,e[3]*=t,e[7]*=t,e[11]*=t,e[15]*=t,this}determinant(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[12],o=t[1],a=t[5],l=t[9],c=t[13],u=t[2],h=t[6],d=t[10],f=t[14],g=t[3],v=t[7],_=t[11],m=t[15],y=l*f-c*d,M=a*f-c*h,b=a*d-l*h,E=o*f-c*u,A=o*d-l*u,x=o*h-a*u;return e*(v*y-_*M+m*b)-i*(g*y-_*E+m*A)+s*(g*M-v*E+m*x)-r*(g*b-v*A+_*x)}determinantAffine(){let t=this.elements,e=t[0],i=t[4],s=t[8],r=t[1],o=t[5],a=t[9],l=t[2],c=t[6],u=t[10];return e*(o*u-a*c)-i*(r*u-a*l)+s*(r*c-o*l)}transpose(){let t=this.elements,e;return e=t[1],t[1]=t[4],t[4]=e,e=t[2],t[2]=t[8],t[8]=e,e=t[6],t[6]=t[9],t[9]=e,e=t[3],t[3]=t[12],t[12]=e,e=t[7],t[7]=t[13],t[13]=e,e=t[11],t[11]=t[14],t[14]=e,this}setPosition(t,e,i){let s=this.elements;return t.isVector3?(s[12]=t.x,s[13]=t.y,s[14]=t.z):(s[12]=t,s[13]=e,s[14]=i),this}invert(){let t=this.elements,e=t[0],i=t[1],s=t[2],r=t[3],o=t[4],a=t[5],l=t[6],c=t[7],u=t[8],h=t[9],d=t[10],f=t[11],g=t[12],v=t[13],_=t[14],m=t[15],y=e*a-i*o,M=e*l-s*o,b=e*c-r*o,E=i*l-s*a,A=i*c-r*a,x=s*c-r*l,T=u*v-h*g,D=u*_-d*g,R=u*m-f*g,P=h*_-d*v,F=h*m-f*v,B=d*m-f*_,I=y*B-M*F+b*P+E*R-A*D+x*T;if(I===0)return this.set(0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0);let W=1/I;return t[0]=(a*B-l*F+c*P)*W,t[1]=(s*F-i*B-r*P)*W,t[2]=(v*x-_*A+m*E)*W,t[3]=(d*A-h*x-f*E)*W,t[4]=(l*R-o*B-c*D)*W,t[5]=(e*B-s*R+r*D)*W,t[6]=(_*b-g*x-m*M)*W,t[7]=(u*x-d*b+f*M)*W,t[8]=(o*F-a*R+c*T)*W,t[9]=(i*R-e*F-r*T)*W,t[10]=(g*A-v*b+m*y)*W,t[11]=(h*b-u*A-f*y)*W,t[12]=(a*D-o*P-l*T)*W,t[13]=(e*P-i*D+s*T)*W,t[14]=(v*M-g*E-_*y)*W,t[15]=(u*E-h*M+d*y)*W,this}scale(t){let e=this.elements,i=t.x,s=t.y,r=t.z;return e[0]*=i,e[4]*=s,e[8]*=r,e[1]*=i,e[5]*=s,e[9]*=r,e[2]*=i,e[6]*=s,e[10]*=r,e[3]*=i,e[7]*=s,e[11]*=r,this}getMaxScaleOnAxis(){let t=this.elements,e=t[0]*t[0]+t[1]*t[1]+t[2]*t[2],i=t[4]*t[4]+t[5]*t[5]+t[6]*t[6],s=t[8]*t[8]+t[9]*t[9]+t[10]*t[10];return Math.sqrt(Math.max(e,i,s))}makeTranslation(t,e,i){return t.isVector3?this.set(1,0,0,t.x,0,1,0,t.y,0,0,1,t.z,0,0,0,1):this.set(1,0,0,t,0,1,0,e,0,0,1,i,0,0,0,1),this}makeRotationX(t){let e=Math.cos(t),i=Math.sin(t);return this.set(1,0,0,0,0,e,-i,0,0,i,e,0,0,0,0,1),this}makeRotationY(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,0,i,0,0,1,0,0,-i,0,e,0,0,0,0,1),this}makeRotationZ(t){let e=Math.cos(t),i=Math.sin(t);return this.set(e,-i,0,0,i,e,0,0,0,0,1,0,0,0,0,1),this}makeRotationAxis(t,e){let i=Math.cos(e),s=Math.sin(e),r=1-i,o=t.x,a=t.y,l=t.z,c=r*o,u=r*a;return this.set(c*o+i,c*a-s*l,c*l+s*a,0,c*a+s*l,u*a+i,u*l-s*o,0,c*l-s*a,u*l+s*o,r*l*l+i,0,0,0,0,1),this}makeScale(t,e,i){return this.set(t,0,0,0,0,e,0,0,0,0,i,0,0,0,0,1),this}makeShear(t,e,i,s,r,o){return this.set(1,i,r,0,t,1,o,0,e,s,1,0,0,0,0,1),this}compose(t,e,i){let s=this.elements,r=e._x,o=e._y,a=e._z,l=e._w,c=r+r,u=o+o,h=a+a,d=r*c,f=r*u,g=r*h,v=o*u,_=o*h,m=a*h,y=l*c,M=l*u,b=l*h,E=i.x,A=i.y,x=i.z;return s[0]=(1-(v+m))*E,s[1]=(f+b)*E,s[2]=(g-M)*E,s[3]=0,s[4]=(f-b)*A,s[5]=(1-(d+m))*A,s[6]=(_+y)*A,s[7]=0,s[8]=(g+M)*x,s[9]=(_-y)*x,s[10]=(1-(d+v))*x,s[11]=0,s[12]=t.x,s[13]=t.y,s[14]=t.z,s[15]=1,this}decompose(t,e,i){let s=this.elements;t.x=s[12],t.y=s[13],t.z=s[14];let r=this.determinantAffine();if(r===0)return i.set(1,1,1),e.identity(),this;let o=dr.set(s[0],s[1],s[2]).length(),a=dr.set(s[4],s[5],s[6]).length(),l=dr.set(s[8],s[9],s[10]).length();r<0&&(o=-o),jn.copy(this);let c=1/o,u=1/a,h=1/l;return jn.elements[0]*=c,jn.elements[1]*=c,jn.elements[2]*=c,jn.elements[4]*=u,jn.elements[5]*=u,jn.elements[6]*=u,jn.elements[8]*=h,jn.elements[9]*=h,jn.elements[10]*=h,e.setFromRotationMatrix(jn),i.x=o,i.y=a,i.z=l,this}makePerspective(t,e,i,s,r,o,a=Wn,l=!1){let c=this.elements,u=2*r/(e-t),h=2*r/(i-s),d=(e+t)/(e-t),f=(i+s)/(i-s),g,v;if(l)g=r/(o-r),v=o*r/(o-r);else if(a===Wn)g=-(o+r)/(o-r),v=-2*o*r/(o-r);else if(a===Rr)g=-o/(o-r),v=-o*r/(o-r);else throw new Error("THREE.Matrix4.makePerspective(): Invalid coordinate system: "+a);return c[0]=u,c[4]=0,c[8]=d,c[12]=0,c[1]=0,c[5]=h,c[9]=f,c[13]=0,c[2]=0,c[6]=0,c[10]=g,c[14]=v,c[3]=0,c[7]=0,c[11]=-1,c[15]=0,this}makeOrthographic(t,e,i,s,r,o,a=Wn,l=!1){let c=this.elements,u=2/(e-t),h=2/(i-s),d=-(e+t)/(e-t),f=-(i+s)/(i-s),g,v;if(l)g=1/(o-r),v=o/(o-r);else if(a===Wn)g=-2/(o-r),v=-(o+r)/(o-r);else if(a===Rr)g=-1/(o-r),v=-r/(o-r);else throw new Error("THREE.Matrix4.makeOrthographic(): Invalid coordinate system: "+a);return c[0]=u,c[4]=0,c[8]=0,c[12]=d,c[1]=0,c[5]=h,c[9]=0,c[13]=f,c[2]=0,c[6]=0,c[10]=g,c[14]=v,c[3]=0,c[7]=0,c[11]=0,c[15]=1,this}equals(t){let e=this.elements,i=t.elements;for(let s=0;s<16;s++)if(e[s]!==i[s])return!1;return!0}fromArray(t,e=0){for(let i=0;i<16;i++)this.elements[i]=t[i+e];return this}toArray(t=[],e=0){let i=this.elements;return t[e]=i[0],t[e+1]=i[1],t[e+2]=i[2],t[e+3]=i[3],t[e+4]=i[4],t[e+5]=i[5],t[e+6]=i[6],t[e+7]=i[7],t[e+8]=i[8],t[e+9]=i[9],t[e+10]=i[10],t[e+11]=i[11],t[e+12]=i[12],t[e+13]=i[13],t[e+14]=i[14],t[e+15]=i[15],t}},dr=new N,jn=new ee,Ey=new N(0,0,0),Cy=new N(1,1,1),Yi=new N,xl=new N,En=new N,bm=new ee,Mm=new We,Ni=class n{constructor(t=0,e=0,i=0,s=n.DEFAULT_ORDER){this.isEuler=!0,this._x=t,this._y=e,this._z=i,this._order=s}get x(){return this._x}set x(t){this._x=t,this._onChangeCallback()}get y(){return this._y}set y(t){this._y=t,this._onChangeCallback()}get z(){return this._z}set z(t){this._z=t,this._onChangeCallback()}get order(){return this._order}set order(t){this._order=t,this._onChangeCallback()}set(t,e,i,s=this._order){return this._x=t,this._y=e,this._z=i,this._order=s,this._onChangeCallback(),this}clone(){return new this.constructor(this._x,this._y,this._z,this._order)}copy(t){return this._x=t._x,this._y=t._y,this._z=t._z,this._order=t._order,this._onChangeCallback(),this}setFromRotationMatrix(t,e=this._order,i=!0){let s=t.elements,r=s[0],o=s[4],a=s[8],l=s[1],c=s[5],u=s[9],h=s[2],d=s[6],f=s[10];switch(e){case"XYZ":this._y=Math.asin(Ht(a,-1,1)),Math.abs(a)<.9999999?(this._x=Math.atan2(-u,f),this._z=Math.atan2(-o,r)):(this._x=Math.atan2(d,c),this._z=0);break;case"YXZ":this._x=Math.asin(-Ht(u,-1,1)),Math.abs(u)<.9999999?(this._y=Math.atan2(a,f),this._z=Math.atan2(l,c)):(this._y=Math.atan2(-h,r),this._z=0);break;case"ZXY":this._x=Math.asin(Ht(d,-1,1)),Math.abs(d)<.9999999?(this._y=Math.atan2(-h,f),this._z=Math.atan2(-o,c)):(this._y=0,this._z=Math.atan2(l,r));break;case"ZYX":this._y=Math.asin(-Ht(h,-1,1)),Math.abs(h)<.9999999?(this._x=Math.atan2(d,f),this._z=Math.atan2(l,r)):(this._x=0,this._z=Math.atan2(-o,c));break;case"YZX":this._z=Math.asin(Ht(l,-1,1)),Math.abs(l)<.9999999?(this._x=Math.atan2(-u,c),this._y=Math.atan2(-h,r)):(this._x=0,this._y=Math.atan2(a,f));break;case"XZY":this._z=Math.asin(-Ht(o,-1,1)),Math.abs(o)<.9999999?(this._x=Math.atan2(d,c),this._y=Math.atan2(a,r)):(this._x=Math.atan2(-u,f),this._y=0);break;default:It("Euler: .setFromRotationMatrix() encountered an unknown order: "+e)}return this._order=e,i===!0&&this._onChangeCallback(),this}setFromQuaternion(t,e,i){return bm.makeRotationFromQuaternion(t),this.setFromRotationMatrix(bm,e,i)}setFromVector3(t,e=this._order){return this.set(t.x,t.y,t.z,e)}reorder(t){return Mm.setFromEuler(this),this.setFromQuaternion(Mm,t)}equals(t){return t._x===this._x&&t._y===this._y&&t._z===this._z&&t._order===this._order}fromArray(t){return this._x=t[0],this._y=t[1],this._z=t[2],t[3]!==void 0&&(this._order=t[3]),this._onChangeCallback(),this}toArray(t=[],e=0){return t[e]=this._x,t[e+1]=this._y,t[e+2]=this._z,t[e+3]=this._order,t}_onChange(t){return this._onChangeCallback=t,this}_onChangeCallback(){}*[Symbol.iterator](){yield this._x,yield this._y,yield this._z,yield this._order}};Ni.DEFAULT_ORDER="XYZ";var Go=class{constructor(){this.mask=1}set(t){this.mask=(1<<t|0)>>>0}enable(t){this.mask|=1<<t|0}enableAll(){this.mask=-1}toggle(t){this.mask^=1<<t|0}disable(t){this.mask&=~(1<<t|0)}disableAll(){this.mask=0}test(t){return(this.mask&t.mask)!==0}isEnabled(t){return(this.mask&(1<<t|0))!==0}},Ry=0,Sm=new N,pr=new We,Ei=new ee,bl=new N,wo=new N,Py=new N,Iy=new We,wm=new N(1,0,0),Tm=new N(0,1,0),Am=new N(0,0,1),Em={type:"added"},Dy={type:"removed"},mr={type:"childadded",child:null},Vh={type:"childremoved",child:null},Qe=class n extends ei{constructor(){super(),this.isObject3D=!0,Object.defineProperty(this,"id",{value:Ry++}),this.uuid=zs(),this.name="",this.type="Object3D",this.parent=null,this.children=[],this.up=n.DEFAULT_UP.clone();let t=new N,e=new Ni,i=new We,s=new N(1,1,1);function r(){i.setFromEuler(e,!1)}function o(){e.setFromQuaternion(i,void 0,!1)}e._onChange(r),i._onChange(o),Object.defineProperties(this,{position:{configurable:!0,enumerable:!0,value:t},rotation:{configurable:!0,enumerable:!0,value:e},quaternion:{configurable:!0,enumerable:!0,value:i},scale:{configurable:!0,enumerable:!0,value:s},modelViewMatrix:{value:new ee},normalMatrix:{value:new kt}}),this.matrix=new ee,this.matrixWorld=new ee,this.matrixAutoUpdate=n.DEFAULT_MATRIX_AUTO_UPDATE,this.matrixWorldAutoUpdate=n.DEFAULT_MATRIX_WORLD_AUTO_UPDATE,this.matrixWorldNeedsUpdate=!1,this.layers=new Go,this.visible=!0,this.castShadow=!1,this.receiveShadow=!1,this.frustumCulled=!0,this.renderOrder=0,this.animations=[],this.customDepthMaterial=void 0,this.customDistanceMaterial=void 0,this.static=!1,this.userData={},this.pivot=null}onBeforeShadow(){}onAfterShadow(){}onBeforeRender(){}onAfterRender(){}applyMatrix4(t){this.matrixAutoUpdate&&this.updateMatrix(),this.matrix.premultiply(t),this.matrix.decompose(this.position,this.quaternion,this.scale),this.pivot!==null&&this.position.copy(this.pivot).applyMatrix4(this.matrix).sub(this.pivot)}applyQuaternion(t){return this.quaternion.premultiply(t),this}setRotationFromAxisAngle(t,e){this.quaternion.setFromAxisAngle(t,e)}setRotationFromEuler(t){this.quaternion.setFromEuler(t,!0)}setRotationFromMatrix(t){this.quaternion.setFromRotationMatrix(t)}setRotationFromQuaternion(t){this.quaternion.copy(t)}rotateOnAxis(t,e){return pr.setFromAxisAngle(t,e),this.quaternion.multiply(pr),this}rotateOnWorldAxis(t,e){return pr.setFromAxisAngle(t,e),this.quaternion.premultiply(pr),this}rotateX(t){return this.rotateOnAxis(wm,t)}rotateY(t){return this.rotateOnAxis(Tm,t)}rotateZ(t){return this.rotateOnAxis(Am,t)}translateOnAxis(t,e){return Sm.copy(t).applyQuaternion(this.quaternion),this.position.add(Sm.multiplyScalar(e)),this}translateX(t){return this.translateOnAxis(wm,t)}translateY(t){return this.translateOnAxis(Tm,t)}translateZ(t){return this.translateOnAxis(Am,t)}localToWorld(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(this.matrixWorld)}worldToLocal(t){return this.updateWorldMatrix(!0,!1),t.applyMatrix4(Ei.copy(this.matrixWorld).invert())}lookAt(t,e,i){t.isVector3?bl.copy(t):bl.set(t,e,i);let s=this.parent;this.updateWorldMatrix(!0,!1),wo.setFromMatrixPosition(this.matrixWorld),this.isCamera||this.isLight?Ei.lookAt(wo,bl,this.up):Ei.lookAt(bl,wo,this.up),this.quaternion.setFromRotationMatrix(Ei),s&&(Ei.extractRotation(s.matrixWorld),pr.setFromRotationMatrix(Ei),this.quaternion.premultiply(pr.invert()))}add(t){if(arguments.length>1){for(let e=0;e<arguments.length;e++)this.add(arguments[e]);return this}return t===this?(Ft("Object3D.add: object can't be added as a child of itself.",t),this):(t&&t.isObject3D?(t.removeFromParent(),t.parent=this,this.children.push(t),t.dispatchEvent(Em),mr.child=t,this.dispatchEvent(mr),mr.child=null):Ft("Object3D.add: object not an instance of THREE.Object3D.",t),this)}remove(t){if(arguments.length>1){for(let i=0;i<arguments.length;i++)this.remove(arguments[i]);return this}let e=this.children.indexOf(t);return e!==-1&&(t.parent=null,this.children.splice(e,1),t.dispatchEvent(Dy),Vh.child=t,this.dispatchEvent(Vh),Vh.child=null),this}removeFromParent(){let t=this.parent;return t!==null&&t.remove(this),this}clear(){return this.remove(...this.children)}attach(t){return this.updateWorldMatrix(!0,!1),Ei.copy(this.matrixWorld).invert(),t.parent!==null&&(t.parent.updateWorldMatrix(!0,!1),Ei.multiply(t.parent.matrixWorld)),t.applyMatrix4(Ei),t.removeFromParent(),t.parent=this,this.children.push(t),t.updateWorldMatrix(!1,!0),t.dispatchEvent(Em),mr.child=t,this.dispatchEvent(mr),mr.child=null,this}getObjectById(t){return this.getObjectByProperty("id",t)}getObjectByName(t){return this.getObjectByProperty("name",t)}getObjectByProperty(t,e){if(this[t]===e)return this;for(let i=0,s=this.children.length;i<s;i++){let o=this.children[i].getObjectByProperty(t,e);if(o!==void 0)return o}}getObjectsByProperty(t,e,i=[]){this[t]===e&&i.push(this);let s=this.children;for(let r=0,o=s.length;r<o;r++)s[r].getObjectsByProperty(t,e,i);return i}getWorldPosition(t){return this.updateWorldMatrix(!0,!1),t.setFromMatrixPosition(this.matrixWorld)}getWorldQuaternion(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(wo,t,Py),t}getWorldScale(t){return this.updateWorldMatrix(!0,!1),this.matrixWorld.decompose(wo,Iy,t),t}getWorldDirection(t){this.updateWorldMatrix(!0,!1);let e=this.matrixWorld.elements;return t.set(e[8],e[9],e[10]).normalize()}raycast(){}intersectsFrustum(){return!0}traverse(t){t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverse(t)}traverseVisible(t){if(this.visible===!1)return;t(this);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].traverseVisible(t)}traverseAncestors(t){let e=this.parent;e!==null&&(t(e),e.traverseAncestors(t))}updateMatrix(){this.matrix.compose(this.position,this.quaternion,this.scale);let t=this.pivot;if(t!==null){let e=t.x,i=t.y,s=t.z,r=this.matrix.elements;r[12]+=e-r[0]*e-r[4]*i-r[8]*s,r[13]+=i-r[1]*e-r[5]*i-r[9]*s,r[14]+=s-r[2]*e-r[6]*i-r[10]*s}this.matrixWorldNeedsUpdate=!0}updateMatrixWorld(t){this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||t)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,t=!0);let e=this.children;for(let i=0,s=e.length;i<s;i++)e[i].updateMatrixWorld(t)}updateWorldMatrix(t,e,i=!1){let s=this.parent;if(t===!0&&s!==null&&s.updateWorldMatrix(!0,!1),this.matrixAutoUpdate&&this.updateMatrix(),(this.matrixWorldNeedsUpdate||i)&&(this.matrixWorldAutoUpdate===!0&&(this.parent===null?this.matrixWorld.copy(this.matrix):this.matrixWorld.multiplyMatrices(this.parent.matrixWorld,this.matrix)),this.matrixWorldNeedsUpdate=!1,i=!0),e===!0){let r=this.children;for(let o=0,a=r.length;o<a;o++)r[o].updateWorldMatrix(!1,!0,i)}}toJSON(t){let e=t===void 0||typeof t=="string",i={};e&&(t={geometries:{},materials:{},textures:{},images:{},shapes:{},skeletons:{},animations:{},nodes:{}},i.metadata={version:4.7,type:"Object",generator:"Object3D.toJSON"});let s={};s.uuid=this.uuid,s.type=this.type,s.name=this.name,s.castShadow=this.castShadow,s.receiveShadow=this.receiveShadow,s.visible=this.visible,s.frustumCulled=this.frustumCulled,s.renderOrder=this.renderOrder,s.static=this.static,s.matrixAutoUpdate=this.matrixAutoUpdate,Object.keys(this.userData).length>0&&(s.userData=this.userData),s.layers=this.layers.mask,s.matrix=this.matrix.toArray(),s.up=this.up.toArray(),this.pivot!==null&&(s.pivot=this.pivot.toArray()),this.morphTargetDictionary!==void 0&&(s.morphTargetDictionary=Object.assign({},this.morphTargetDictionary)),this.morphTargetInfluences!==void 0&&(s.morphTargetInfluences=this.morphTargetInfluences.slice()),this.isInstancedMesh&&(s.type="InstancedMesh",s.count=this.count,s.instanceMatrix=this.instanceMatrix.toJSON(),this.instanceColor!==null&&(s.instanceColor=this.instanceColor.toJSON())),this.isBatchedMesh&&(s.type="BatchedMesh",s.perObjectFrustumCulled=this.perObjectFrustumCulled,s.sortObjects=this.sortObjects,s.drawRanges=this._drawRanges,s.reservedRanges=this._reservedRanges,s.geometryInfo=this._geometryInfo.map(a=>({...a,boundingBox:a.boundingBox?a.boundingBox.toJSON():void 0,boundingSphere:a.boundingSphere?a.boundingSphere.toJSON():void 0})),s.instanceInfo=this._instanceInfo.map(a=>({...a})),s.availableInstanceIds=this._availableInstanceIds.slice(),s.availableGeometryIds=this._availableGeometryIds.slice(),s.nextIndexStart=this._nextIndexStart,s.nextVertexStart=this._nextVertexStart,s.geometryCount=this._geometryCount,s.maxInstanceCount=this._maxInstanceCount,s.maxVertexCount=this._maxVertexCount,s.maxIndexCount=this._maxIndexCount,s.geometryInitialized=this._geometryInitialized,s.matricesTexture=this._matricesTexture.toJSON(t),s.indirectTexture=this._indirectTexture.toJSON(t),this._colorsTexture!==null&&(s.colorsTexture=this._colorsTexture.toJSON(t)),this.boundingSphere!==null&&(s.boundingSphere=this.boundingSphere.toJSON()),this.boundingBox!==null&&(s.boundingBox=this.boundingBox.toJSON()));function r(a,l){return a[l.uuid]===void 0&&(a[l.uuid]=l.toJSON(t)),l.uuid}if(this.isScene)this.background&&(this.background.isColor?s.background=this.background.toJSON():this.background.isTexture&&(s.background=this.background.toJSON(t).uuid)),this.environment&&this.environment.isTexture&&this.environment.isRenderTargetTexture!==!0&&(s.environment=this.environment.toJSON(t).uuid);else if(this.isMesh||this.isLine||this.isPoints){s.geometry=r(t.geometries,this.geometry);let a=this.geometry.parameters;if(a!==void 0&&a.shapes!==void 0){let l=a.shapes;if(Array.isArray(l))for(let c=0,u=l.length;c<u;c++){let h=l[c];r(t.shapes,h)}else r(t.shapes,l)}}if(this.isSkinnedMesh&&(s.bindMode=this.bindMode,s.bindMatrix=this.bindMatrix.toArray(),this.skeleton!==void 0&&(r(t.skeletons,this.skeleton),s.skeleton=this.skeleton.uuid)),this.material!==void 0)if(Array.isArray(this.material)){let a=[];for(let l=0,c=this.material.length;l<c;l++)a.push(r(t.materials,this.material[l]));s.material=a}else s.material=r(t.materials,this.material);if(this.children.length>0){s.children=[];for(let a=0;a<this.children.length;a++)s.children.push(this.children[a].toJSON(t).object)}if(this.animations.length>0){s.animations=[];for(let a=0;a<this.animations.length;a++){let l=this.animations[a];s.animations.push(r(t.animations,l))}}if(e){let a=o(t.geometries),l=o(t.materials),c=o(t.textures),u=o(t.images),h=o(t.shapes),d=o(t.skeletons),f=o(t.animations),g=o(t.nodes);a.length>0&&(i.geometries=a),l.length>0&&(i.materials=l),c.length>0&&(i.textures=c),u.length>0&&(i.images=u),h.length>0&&(i.shapes=h),d.length>0&&(i.skeletons=d),f.length>0&&(i.animations=f),g.length>0&&(i.nodes=g)}return i.object=s,i;function o(a){let l=[];for(let c in a){let u=a[c];delete u.metadata,l.push(u)}return l}}clone(t){return new this.constructor().copy(this,t)}copy(t,e=!0){if(this.name=t.name,this.up.copy(t.up),this.position.copy(t.position),this.rotation.order=t.rotation.order,this.quaternion.copy(t.quaternion),this.scale.copy(t.scale),this.pivot=t.pivot!==null?t.pivot.clone():null,this.matrix.copy(t.matrix),this.matrixWorld.copy(t.matrixWorld),this.matrixAutoUpdate=t.matrixAutoUpdate,this.matrixWorldAutoUpdate=t.matrixWorldAutoUpdate,this.matrixWorldNeedsUpdate=t.matrixWorldNeedsUpdate,this.layers.mask=t.layers.mask,this.visible=t.visible,this.castShadow=t.castShadow,this.receiveShadow=t.receiveShadow,this.frustumCulled=t.frustumCulled,this.renderOrder=t.renderOrder,this.static=t.static,this.animations=t.animations.slice(),this.userData=JSON.parse(JSON.stringify(t.userData)),e===!0)for(let i=0;i<t.children.length;i++){let s=t.children[i];this.add(s.clone())}return this}dispose(){this.dispatchEvent({type:"dispose"})}};Qe.DEFAULT_UP=new N(0,1,0);Qe.DEFAULT_MATRIX_AUTO_UPDATE=!0;Qe.DEFAULT_MATRIX_WORLD_AUTO_UPDATE=!0;var ci=class extends Qe{constructor(){super(),this.isGroup=!0,this.type="Group"}},Ly={type:"move"},Lr=class{constructor(){this._targetRay=null,this._grip=null,this._hand=null}getHandSpace(){return this._hand===null&&(this._hand=new ci,this._hand.matrixAutoUpdate=!1,this._hand.visible=!1,this._hand.joints={},this._hand.inputState={pinching:!1}),this._hand}getTargetRaySpace(){return this._targetRay===null&&(this._targetRay=new ci,this._targetRay.matrixAutoUpdate=!1,this._targetRay.visible=!1,this._targetRay.hasLinearVelocity=!1,this._targetRay.linearVelocity=new N,this._targetRay.hasAngularVelocity=!1,this._targetRay.angularVelocity=new N),this._targetRay}getGripSpace(){return this._grip===null&&(this._grip=new ci,this._grip.matrixAutoUpdate=!1,this._grip.visible=!1,this._grip.hasLinearVelocity=!1,this._grip.linearVelocity=new N,this._grip.hasAngularVelocity=!1,this._grip.angularVelocity=new N,this._grip.eventsEnabled=!1),this._grip}dispatchEvent(t){return this._targetRay!==null&&this._targetRay.dispatchEvent(t),this._grip!==null&&this._grip.dispatchEvent(t),this._hand!==null&&this._hand.dispatchEvent(t),this}connect(t){if(t&&t.hand){let e=this._hand;if(e)for(let i of t.hand.values())this._getHandJoint(e,i)}return this.dispatchEvent({type:"connected",data:t}),this}disconnect(t){return this.dispatchEvent({type:"disconnected",data:t}),this._targetRay!==null&&(this._targetRay.visible=!1),this._grip!==null&&(this._grip.visible=!1),this._hand!==null&&(this._hand.visible=!1),this}update(t,e,i){let s=null,r=null,o=null,a=this._targetRay,l=this._grip,c=this._hand;if(t&&e.session.visibilityState!=="visible-blurred"){if(c&&t.hand){o=!0;for(let v of t.hand.values()){let _=e.getJointPose(v,i),m=this._getHandJoint(c,v);_!==null&&(m.matrix.fromArray(_.transform.matrix),m.matrix.decompose(m.position,m.quaternion,m.scale),m.matrixWorldNeedsUpdate=!0,m.jointRadius=_.radius),m.visible=_!==null}let u=c.joints["index-finger-tip"],h=c.joints["thumb-tip"],d=u.position.distanceTo(h.position),f=.02,g=.005;c.inputState.pinching&&d>f+g?(c.inputState.pinching=!1,this.dispatchEvent({type:"pinchend",handedness:t.handedness,target:this})):!c.inputState.pinching&&d<=f-g&&(c.inputState.pinching=!0,this.dispatchEvent({type:"pinchstart",handedness:t.handedness,target:this}))}else l!==null&&t.gripSpace&&(r=e.getPose(t.gripSpace,i),r!==null&&(l.matrix.fromArray(r.transform.matrix),l.matrix.decompose(l.position,l.quaternion,l.scale),l.matrixWorldNeedsUpdate=!0,r.linearVelocity?(l.hasLinearVelocity=!0,l.linearVelocity.copy(r.linearVelocity)):l.hasLinearVelocity=!1,r.angularVelocity?(l.hasAngularVelocity=!0,l.angularVelocity.copy(r.angularVelocity)):l.hasAngularVelocity=!1,l.eventsEnabled&&l.dispatchEvent({type:"gripUpdated",data:t,target:this})));a!==null&&(s=e.getPose(t.targetRaySpace,i),s===null&&r!==null&&(s=r),s!==null&&(a.matrix.fromArray(s.transform.matrix),a.matrix.decompose(a.position,a.quaternion,a.scale),a.matrixWorldNeedsUpdate=!0,s.linearVelocity?(a.hasLinearVelocity=!0,a.linearVelocity.copy(s.linearVelocity)):a.hasLinearVelocity=!1,s.angularVelocity?(a.hasAngularVelocity=!0,a.angularVelocity.copy(s.angularVelocity)):a.hasAngularVelocity=!1,this.dispatchEvent(Ly)))}return a!==null&&(a.visible=s!==null),l!==null&&(l.visible=r!==null),c!==null&&(c.visible=o!==null),this}_getHandJoint(t,e){if(t.joints[e.jointName]===void 0){let i=new ci;i.matrixAutoUpdate=!1,i.visible=!1,t.joints[e.jointName]=i,t.add(i)}return t.joints[e.jointName]}},zg={aliceblue:15792383,antiquewhite:16444375,aqua:65535,aquamarine:8388564,azure:15794175,beige:16119260,bisque:16770244,black:0,blanchedalmond:16772045,blue:255,blueviolet:9055202,brown:10824234,burlywood:14596231,cadetblue:6266528,chartreuse:8388352,chocolate:13789470,coral:16744272,cornflowerblue:6591981,cornsilk:16775388,crimson:14423100,cyan:65535,darkblue:139,darkcyan:35723,darkgoldenrod:12092939,darkgray:11119017,darkgreen:25600,darkgrey:11119017,darkkhaki:12433259,darkmagenta:9109643,darkolivegreen:5597999,darkorange:16747520,darkorchid:10040012,darkred:9109504,darksalmon:15308410,darkseagreen:9419919,darkslateblue:4734347,darkslategray:3100495,darkslategrey:3100495,darkturquoise:52945,darkviolet:9699539,deeppink:16716947,deepskyblue:49151,dimgray:6908265,dimgrey:6908265,dodgerblue:2003199,firebrick:11674146,floralwhite:16775920,forestgreen:2263842,fuchsia:16711935,gainsboro:14474460,ghostwhite:16316671,gold:16766720,goldenrod:14329120,gray:8421504,green:32768,greenyellow:11403055,grey:8421504,honeydew:15794160,hotpink:16738740,indianred:13458524,indigo:4915330,ivory:16777200,khaki:15787660,lavender:15132410,lavenderblush:16773365,lawngreen:8190976,lemonchiffon:16775885,lightblue:11393254,lightcoral:15761536,lightcyan:14745599,lightgoldenrodyellow:16448210,lightgray:13882323,lightgreen:9498256,lightgrey:13882323,lightpink:16758465,lightsalmon:16752762,lightseagreen:2142890,lightskyblue:8900346,lightslategray:7833753,lightslategrey:7833753,lightsteelblue:11584734,lightyellow:16777184,lime:65280,limegreen:3329330,linen:16445670,magenta:16711935,maroon:8388608,mediumaquamarine:6737322,mediumblue:205,mediumorchid:12211667,mediumpurple:9662683,mediumseagreen:3978097,mediumslateblue:8087790,mediumspringgreen:64154,mediumturquoise:4772300,mediumvioletred:13047173,midnightblue:1644912,mintcream:16121850,mistyrose:16770273,moccasin:16770229,navajowhite:16768685,navy:128,oldlace:16643558,olive:8421376,olivedrab:7048739,orange:16753920,orangered:16729344,orchid:14315734,palegoldenrod:15657130,palegreen:10025880,paleturquoise:11529966,palevioletred:14381203,papayawhip:16773077,peachpuff:16767673,peru:13468991,pink:16761035,plum:14524637,powderblue:11591910,purple:8388736,rebeccapurple:6697881,red:16711680,rosybrown:12357519,royalblue:4286945,saddlebrown:9127187,salmon:16416882,sandybrown:16032864,seagreen:3050327,seashell:16774638,sienna:10506797,silver:12632256,skyblue:8900331,slateblue:6970061,slategray:7372944,slategrey:7372944,snow:16775930,springgreen:65407,steelblue:4620980,tan:13808780,teal:32896,thistle:14204888,tomato:16737095,turquoise:4251856,violet:15631086,wheat:16113331,white:16777215,whitesmoke:16119285,yellow:16776960,yellowgreen:10145074},Zi={h:0,s:0,l:0},Ml={h:0,s:0,l:0};function Gh(n,t,e){return e<0&&(e+=1),e>1&&(e-=1),e<1/6?n+(t-n)*6*e:e<1/2?t:e<2/3?n+(t-n)*6*(2/3-e):n}var Vt=class{constructor(t,e,i){return this.isColor=!0,this.r=1,this.g=1,this.b=1,this.set(t,e,i)}set(t,e,i){if(e===void 0&&i===void 0){let s=t;s&&s.isColor?this.copy(s):typeof s=="number"?this.setHex(s):typeof s=="string"&&this.setStyle(s)}else this.setRGB(t,e,i);return this}setScalar(t){return this.r=t,this.g=t,this.b=t,this}setHex(t,e=Rn){return t=Math.floor(t),this.r=(t>>16&255)/255,this.g=(t>>8&255)/255,this.b=(t&255)/255,Kt.colorSpaceToWorking(this,e),this}setRGB(t,e,i,s=Kt.workingColorSpace){return this.r=t,this.g=e,this.b=i,Kt.colorSpaceToWorking(this,s),this}setHSL(t,e,i,s=Kt.workingColorSpace){if(t=Hf(t,1),e=Ht(e,0,1),i=Ht(i,0,1),e===0)this.r=this.g=this.b=i;else{let r=i<=.5?i*(1+e):i+e-i*e,o=2*i-r;this.r=Gh(o,r,t+1/3),this.g=Gh(o,r,t),this.b=Gh(o,r,t-1/3)}return Kt.colorSpaceToWorking(this,s),this}setStyle(t,e=Rn){function i(r){r!==void 0&&parseFloat(r)<1&&It("Color: Alpha component of "+t+" will be ignored.")}let s;if(s=/^(\w+)\(([^\)]*)\)/.exec(t)){let r,o=s[1],a=s[2];switch(o){case"rgb":case"rgba":if(r=/^\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(255,parseInt(r[1],10))/255,Math.min(255,parseInt(r[2],10))/255,Math.min(255,parseInt(r[3],10))/255,e);if(r=/^\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setRGB(Math.min(100,parseFloat(r[1]))/100,Math.min(100,parseFloat(r[2]))/100,Math.min(100,parseFloat(r[3]))/100,e);break;case"hsl":case"hsla":if(r=/^\s*([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*,\s*(\d+(?:\.\d+)?|\.\d+)\%\s*(?:,\s*(\d+(?:\.\d+)?|\.\d+)\s*)?$/.exec(a))return i(r[4]),this.setHSL(parseFloat(r[1])/360,parseFloat(r[2])/100,parseFloat(r[3])/100,e);break;default:It("Color: Unknown color model "+t)}}else if(s=/^\#([A-Fa-f\d]+)$/.exec(t)){let r=s[1],o=r.length;if(o===3)return this.setRGB(parseInt(r.charAt(0),16)/15,parseInt(r.charAt(1),16)/15,parseInt(r.charAt(2),16)/15,e);if(o===6)return this.setHex(parseInt(r,16),e);It("Color: Invalid hex color "+t)}else if(t&&t.length>0)return this.setColorName(t,e);return this}setColorName(t,e=Rn){let i=zg[t.toLowerCase()];return i!==void 0?this.setHex(i,e):It("Color: Unknown color "+t),this}clone(){return new this.constructor(this.r,this.g,this.b)}copy(t){return this.r=t.r,this.g=t.g,this.b=t.b,this}copySRGBToLinear(t){return this.r=Di(t.r),this.g=Di(t.g),this.b=Di(t.b),this}copyLinearToSRGB(t){return this.r=Ar(t.r),this.g=Ar(t.g),this.b=Ar(t.b),this}convertSRGBToLinear(){return this.copySRGBToLinear(this),this}convertLinearToSRGB(){return this.copyLinearToSRGB(this),this}getHex(t=Rn){return Kt.workingToColorSpace(cn.copy(this),t),Math.round(Ht(cn.r*255,0,255))*65536+Math.round(Ht(cn.g*255,0,255))*256+Math.round(Ht(cn.b*255,0,255))}getHexString(t=Rn){return("000000"+this.getHex(t).toString(16)).slice(-6)}getHSL(t,e=Kt.workingColorSpace){Kt.workingToColorSpace(cn.copy(this),e);let i=cn.r,s=cn.g,r=cn.b,o=Math.max(i,s,r),a=Math.min(i,s,r),l,c,u=(a+o)/2;if(a===o)l=0,c=0;else{let h=o-a;switch(c=u<=.5?h/(o+a):h/(2-o-a),o){case i:l=(s-r)/h+(s<r?6:0);break;case s:l=(r-i)/h+2;break;case r:l=(i-s)/h+4;break}l/=6}return t.h=l,t.s=c,t.l=u,t}getRGB(t,e=Kt.workingColorSpace){return Kt.workingToColorSpace(cn.copy(this),e),t.r=cn.r,t.g=cn.g,t.b=cn.b,t}getStyle(t=Rn){Kt.workingToColorSpace(cn.copy(this),t);let e=cn.r,i=cn.g,s=cn.b;return t!==Rn?`color(${t} ${e.toFixed(3)} ${i.toFixed(3)} ${s.toFixed(3)})`:`rgb(${Math.round(e*255)},${Math.round(i*255)},${Math.round(s*255)})`}offsetHSL(t,e,i){return this.getHSL(Zi),this.setHSL(Zi.h+t,Zi.s+e,Zi.l+i)}add(t){return this.r+=t.r,this.g+=t.g,this.b+=t.b,this}addColors(t,e){return this.r=t.r+e.r,this.g=t.g+e.g,this.b=t.b+e.b,this}addScalar(t){return this.r+=t,this.g+=t,this.b+=t,this}sub(t){return this.r=Math.max(0,this.r-t.r),this.g=Math.max(0,this.g-t.g),this.b=Math.max(0,this.b-t.b),this}multiply(t){return this.r*=t.r,this.g*=t.g,this.b*=t.b,this}multiplyScalar(t){return this.r*=t,this.g*=t,this.b*=t,this}lerp(t,e){return this.r+=(t.r-this.r)*e,this.g+=(t.g-this.g)*e,this.b+=(t.b-this.b)*e,this}lerpColors(t,e,i){return this.r=t.r+(e.r-t.r)*i,this.g=t.g+(e.g-t.g)*i,this.b=t.b+(e.b-t.b)*i,this}lerpHSL(t,e){this.getHSL(Zi),t.getHSL(Ml);let i=No(Zi.h,Ml.h,e),s=No(Zi.s,Ml.s,e),r=No(Zi.l,Ml.l,e);return this.setHSL(i,s,r),this}setFromVector3(t){return this.r=t.x,this.g=t.y,this.b=t.z,this}applyMatrix3(t){let e=this.r,i=this.g,s=this.b,r=t.elements;return this.r=r[0]*e+r[3]*i+r[6]*s,this.g=r[1]*e+r[4]*i+r[7]*s,this.b=r[2]*e+r[5]*i+r[8]*s,this}equals(t){return t.r===this.r&&t.g===this.g&&t.b===this.b}fromArray(t,e=0){return this.r=t[e],this.g=t[e+1],this.b=t[e+2],this}toArray(t=[],e=0){return t[e]=this.r,t[e+1]=this.g,t[e+2]=this.b,t}fromBufferAttribute(t,e){return this.r=t.getX(e),this.g=t.getY(e),this.b=t.getZ(e),this}toJSON(){return this.getHex()}*[Symbol.iterator](){yield this.r,yield this.g,yield this.b}},cn=new Vt;Vt.NAMES=zg;var Ho=class extends Qe{constructor(){super(),this.isScene=!0,this.type="Scene",this.background=null,this.environment=null,this.fog=null,this.backgroundBlurriness=0,this.backgroundIntensity=1,this.backgroundRotation=new Ni,this.environmentIntensity=1,this.environmentRotation=new Ni,this.overrideMaterial=null,typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}copy(t,e){return super.copy(t,e),this.background=t.background!==null?t.background.clone():null,this.environment=t.environment!==null?t.environment.clone():null,this.fog=t.fog!==null?t.fog.clone():null,this.backgroundBlurriness=t.backgroundBlurriness,this.backgroundIntensity=t.backgroundIntensity,this.backgroundRotation.copy(t.backgroundRotation),this.environmentIntensity=t.environmentIntensity,this.environmentRotation.copy(t.environmentRotation),this.overrideMaterial=t.overrideMaterial!==null?t.overrideMaterial.clone():null,this.matrixAutoUpdate=t.matrixAutoUpdate,this}toJSON(t){let e=super.toJSON(t);return this.fog!==null&&(e.object.fog=this.fog.toJSON()),e.object.backgroundBlurriness=this.backgroundBlurriness,e.object.backgroundIntensity=this.backgroundIntensity,e.object.backgroundRotation=this.backgroundRotation.toArray(),e.object.environmentIntensity=this.environmentIntensity,e.object.environmentRotation=this.environmentRotation.toArray(),e}},Qn=new N,Ci=new N,Hh=new N,Ri=new N,gr=new N,_r=new N,Cm=new N,Wh=new N,Xh=new N,qh=new N,$h=new Te,Yh=new Te,Zh=new Te,Qi=class n{constructor(t=new N,e=new N,i=new N){this.a=t,this.b=e,this.c=i}static getNormal(t,e,i,s){s.subVectors(i,e),Qn.subVectors(t,e),s.cross(Qn);let r=s.lengthSq();return r>0?s.multiplyScalar(1/Math.sqrt(r)):s.set(0,0,0)}static getBarycoord(t,e,i,s,r){Qn.subVectors(s,e),Ci.subVectors(i,e),Hh.subVectors(t,e);let o=Qn.dot(Qn),a=Qn.dot(Ci),l=Qn.dot(Hh),c=Ci.dot(Ci),u=Ci.dot(Hh),h=o*c-a*a;if(h===0)return r.set(0,0,0),null;let d=1/h,f=(c*l-a*u)*d,g=(o*u-a*l)*d;return r.set(1-f-g,g,f)}static containsPoint(t,e,i,s){return this.getBarycoord(t,e,i,s,Ri)===null?!1:Ri.x>=0&&Ri.y>=0&&Ri.x+Ri.y<=1}static getInterpolation(t,e,i,s,r,o,a,l){return this.getBarycoord(t,e,i,s,Ri)===null?(l.x=0,l.y=0,"z"in l&&(l.z=0),"w"in l&&(l.w=0),null):(l.setScalar(0),l.addScaledVector(r,Ri.x),l.addScaledVector(o,Ri.y),l.addScaledVector(a,Ri.z),l)}static getInterpolatedAttribute(t,e,i,s,r,o){return $h.setScalar(0),Yh.setScalar(0),Zh.setScalar(0),$h.fromBufferAttribute(t,e),Yh.fromBufferAttribute(t,i),Zh.fromBufferAttribute(t,s),o.setScalar(0),o.addScaledVector($h,r.x),o.addScaledVector(Yh,r.y),o.addScaledVector(Zh,r.z),o}static isFrontFacing(t,e,i,s){return Qn.subVectors(i,e),Ci.subVectors(t,e),Qn.cross(Ci).dot(s)<0}set(t,e,i){return this.a.copy(t),this.b.copy(e),this.c.copy(i),this}setFromPointsAndIndices(t,e,i,s){return this.a.copy(t[e]),this.b.copy(t[i]),this.c.copy(t[s]),this}setFromAttributeAndIndices(t,e,i,s){return this.a.fromBufferAttribute(t,e),this.b.fromBufferAttribute(t,i),this.c.fromBufferAttribute(t,s),this}clone(){return new this.constructor().copy(this)}copy(t){return this.a.copy(t.a),this.b.copy(t.b),this.c.copy(t.c),this}getArea(){return Qn.subVectors(this.c,this.b),Ci.subVectors(this.a,this.b),Qn.cross(Ci).length()*.5}getMidpoint(t){return t.addVectors(this.a,this.b).add(this.c).multiplyScalar(1/3)}getNormal(t){return n.getNormal(this.a,this.b,this.c,t)}getPlane(t){return t.setFromCoplanarPoints(this.a,this.b,this.c)}getBarycoord(t,e){return n.getBarycoord(t,this.a,this.b,this.c,e)}getInterpolation(t,e,i,s,r){return n.getInterpolation(t,this.a,this.b,this.c,e,i,s,r)}containsPoint(t){return n.containsPoint(t,this.a,this.b,this.c)}isFrontFacing(t){return n.isFrontFacing(this.a,this.b,this.c,t)}intersectsBox(t){return t.intersectsTriangle(this)}closestPointToPoint(t,e){let i=this.a,s=this.b,r=this.c,o,a;gr.subVectors(s,i),_r.subVectors(r,i),Wh.subVectors(t,i);let l=gr.dot(Wh),c=_r.dot(Wh);if(l<=0&&c<=0)return e.copy(i);Xh.subVectors(t,s);let u=gr.dot(Xh),h=_r.dot(Xh);if(u>=0&&h<=u)return e.copy(s);let d=l*h-u*c;if(d<=0&&l>=0&&u<=0&&l-u>0)return o=l/(l-u),e.copy(i).addScaledVector(gr,o);qh.subVectors(t,r);let f=gr.dot(qh),g=_r.dot(qh);if(g>=0&&f<=g)return e.copy(r);let v=f*c-l*g;if(v<=0&&c>=0&&g<=0)return a=c/(c-g),e.copy(i).addScaledVector(_r,a);let _=u*g-f*h;if(_<=0&&h-u>=0&&f-g>=0)return Cm.subVectors(r,s),a=(h-u)/(h-u+(f-g)),e.copy(s).addScaledVector(Cm,a);let m=1/(_+v+d);return o=v*m,a=d*m,e.copy(i).addScaledVector(gr,o).addScaledVector(_r,a)}equals(t){return t.a.equals(this.a)&&t.b.equals(this.b)&&t.c.equals(this.c)}},ui=class{constructor(t=new N(1/0,1/0,1/0),e=new N(-1/0,-1/0,-1/0)){this.isBox3=!0,this.min=t,this.max=e}set(t,e){return this.min.copy(t),this.max.copy(e),this}setFromArray(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e+=3)this.expandByPoint(ti.fromArray(t,e));return this}setFromBufferAttribute(t){this.makeEmpty();for(let e=0,i=t.count;e<i;e++)this.expandByPoint(ti.fromBufferAttribute(t,e));return this}setFromPoints(t){this.makeEmpty();for(let e=0,i=t.length;e<i;e++)this.expandByPoint(t[e]);return this}setFromCenterAndSize(t,e){let i=ti.copy(e).multiplyScalar(.5);return this.min.copy(t).sub(i),this.max.copy(t).add(i),this}setFromObject(t,e=!1){return this.makeEmpty(),this.expandByObject(t,e)}clone(){return new this.constructor().copy(this)}copy(t){return this.min.copy(t.min),this.max.copy(t.max),this}makeEmpty(){return this.min.x=this.min.y=this.min.z=1/0,this.max.x=this.max.y=this.max.z=-1/0,this}isEmpty(){return this.max.x<this.min.x||this.max.y<this.min.y||this.max.z<this.min.z}getCenter(t){return this.isEmpty()?t.set(0,0,0):t.addVectors(this.min,this.max).multiplyScalar(.5)}getSize(t){return this.isEmpty()?t.set(0,0,0):t.subVectors(this.max,this.min)}expandByPoint(t){return this.min.min(t),this.max.max(t),this}expandByVector(t){return this.min.sub(t),this.max.add(t),this}expandByScalar(t){return this.min.addScalar(-t),this.max.addScalar(t),this}expandByObject(t,e=!1){t.updateWorldMatrix(!1,!1);let i=t.geometry;if(i!==void 0){let r=i.getAttribute("position");if(e===!0&&r!==void 0&&t.isInstancedMesh!==!0&&t.isBatchedMesh!==!0)for(let o=0,a=r.count;o<a;o++)t.isMesh===!0?t.getVertexPosition(o,ti):ti.fromBufferAttribute(r,o),ti.applyMatrix4(t.matrixWorld),this.expandByPoint(ti);else t.boundingBox!==void 0?(t.boundingBox===null&&t.computeBoundingBox(),Sl.copy(t.boundingBox)):(i.boundingBox===null&&i.computeBoundingBox(),Sl.copy(i.boundingBox)),Sl.applyMatrix4(t.matrixWorld),this.union(Sl)}let s=t.children;for(let r=0,o=s.length;r<o;r++)this.expandByObject(s[r],e);return this}containsPoint(t){return t.x>=this.min.x&&t.x<=this.max.x&&t.y>=this.min.y&&t.y<=this.max.y&&t.z>=this.min.z&&t.z<=this.max.z}containsBox(t){return this.min.x<=t.min.x&&t.max.x<=this.max.x&&this.min.y<=t.min.y&&t.max.y<=this.max.y&&this.min.z<=t.min.z&&t.max.z<=this.max.z}getParameter(t,e){return e.set((t.x-this.min.x)/(this.max.x-this.min.x),(t.y-this.min.y)/(this.max.y-this.min.y),(t.z-this.min.z)/(this.max.z-this.min.z))}intersectsBox(t){return t.max.x>=this.min.x&&t.min.x<=this.max.x&&t.max.y>=this.min.y&&t.min.y<=this.max.y&&t.max.z>=this.min.z&&t.min.z<=this.max.z}intersectsSphere(t){return this.clampPoint(t.center,ti),ti.distanceToSquared(t.center)<=t.radius*t.radius}intersectsPlane(t){let e,i;return t.normal.x>0?(e=t.normal.x*this.min.x,i=t.normal.x*this.max.x):(e=t.normal.x*this.max.x,i=t.normal.x*this.min.x),t.normal.y>0?(e+=t.normal.y*this.min.y,i+=t.normal.y*this.max.y):(e+=t.normal.y*this.max.y,i+=t.normal.y*this.min.y),t.normal.z>0?(e+=t.normal.z*this.min.z,i+=t.normal.z*this.max.z):(e+=t.normal.z*this.max.z,i+=t.normal.z*this.min.z),e<=-t.constant&&i>=-t.constant}intersectsTriangle(t){if(this.isEmpty())return!1;this.getCenter(To),wl.subVectors(this.max,To),vr.subVectors(t.a,To),yr.subVectors(t.b,To),xr.subVectors(t.c,To),Ji.subVectors(yr,vr),Ki.subVectors(xr,yr),Rs.subVectors(vr,xr);let e=[0,-Ji.z,Ji.y,0,-Ki.z,Ki.y,0,-Rs.z,Rs.y,Ji.z,0,-Ji.x,Ki.z,0,-Ki.x,Rs.z,0,-Rs.x,-Ji.y,Ji.x,0,-Ki.y,Ki.x,0,-Rs.y,Rs.x,0];return!Jh(e,vr,yr,xr,wl)||(e=[1,0,0,0,1,0,0,0,1],!Jh(e,vr,yr,xr,wl))?!1:(Tl.crossVectors(Ji,Ki),e=[Tl.x,Tl.y,Tl.z],Jh(e,vr,yr,xr,wl))}clampPoint(t,e){return e.copy(t).clamp(this.min,this.max)}distanceToPoint(t){return this.clampPoint(t,ti).distanceTo(t)}getBoundingSphere(t){return this.isEmpty()?t.makeEmpty():(this.getCenter(t.center),t.radius=this.getSize(ti).length()*.5),t}intersect(t){return this.min.max(t.min),this.max.min(t.max),this.isEmpty()&&this.makeEmpty(),this}union(t){return this.min.min(t.min),this.max.max(t.max),this}applyMatrix4(t){return this.isEmpty()?this:(Pi[0].set(this.min.x,this.min.y,this.min.z).applyMatrix4(t),Pi[1].set(this.min.x,this.min.y,this.max.z).applyMatrix4(t),Pi[2].set(this.min.x,this.max.y,this.min.z).applyMatrix4(t),Pi[3].set(this.min.x,this.max.y,this.max.z).applyMatrix4(t),Pi[4].set(this.max.x,this.min.y,this.min.z).applyMatrix4(t),Pi[5].set(this.max.x,this.min.y,this.max.z).applyMatrix4(t),Pi[6].set(this.max.x,this.max.y,this.min.z).applyMatrix4(t),Pi[7].set(this.max.x,this.max.y,this.max.z).applyMatrix4(t),this.setFromPoints(Pi),this)}translate(t){return this.min.add(t),this.max.add(t),this}equals(t){return t.min.equals(this.min)&&t.max.equals(this.max)}toJSON(){return{min:this.min.toArray(),max:this.max.toArray()}}fromJSON(t){return this.min.fromArray(t.min),this.max.fromArray(t.max),this}},Pi=[new N,new N,new N,new N,new N,new N,new N,new N],ti=new N,Sl=new ui,vr=new N,yr=new N,xr=new N,Ji=new N,Ki=new N,Rs=new N,To=new N,wl=new N,Tl=new N,Ps=new N;function Jh(n,t,e,i,s){for(let r=0,o=n.length-3;r<=o;r+=3){Ps.fromArray(n,r);let a=s.x*Math.abs(Ps.x)+s.y*Math.abs(Ps.y)+s.z*Math.abs(Ps.z),l=t.dot(Ps),c=e.dot(Ps),u=i.dot(Ps);if(Math.max(-Math.max(l,c,u),Math.min(l,c,u))>a)return!1}return!0}var Oe=new N,Al=new rt,Ny=0,He=class extends ei{constructor(t,e,i=!1){if(super(),Array.isArray(t))throw new TypeError("THREE.BufferAttribute: array should be a Typed Array.");this.isBufferAttribute=!0,Object.defineProperty(this,"id",{value:Ny++}),this.name="",this.array=t,this.itemSize=e,this.count=t!==void 0?t.length/e:0,this.normalized=i,this.usage=Lg,this.updateRanges=[],this.gpuType=Xn,this.version=0,this._normalizationScale=t!==void 0?Xf(t):void 0}onUploadCallback(){}set needsUpdate(t){t===!0&&this.version++}setUsage(t){return this.usage=t,this}addUpdateRange(t,e){this.updateRanges.push({start:t,count:e})}clearUpdateRanges(){this.updateRanges.length=0}copy(t){return this.name=t.name,this.array=new t.array.constructor(t.array),this.itemSize=t.itemSize,this.count=t.count,this.normalized=t.normalized,this.usage=t.usage,this.gpuType=t.gpuType,this._normalizationScale=t._normalizationScale,this}copyAt(t,e,i){t*=this.itemSize,i*=e.itemSize;for(let s=0,r=this.itemSize;s<r;s++)this.array[t+s]=e.array[i+s];return this}copyArray(t){return this.array.set(t),this}applyMatrix3(t){if(this.itemSize===2)for(let e=0,i=this.count;e<i;e++)Al.fromBufferAttribute(this,e),Al.applyMatrix3(t),this.setXY(e,Al.x,Al.y);else if(this.itemSize===3)for(let e=0,i=this.count;e<i;e++)Oe.fromBufferAttribute(this,e),Oe.applyMatrix3(t),this.setXYZ(e,Oe.x,Oe.y,Oe.z);return this}applyMatrix4(t){for(let e=0,i=this.count;e<i;e++)Oe.fromBufferAttribute(this,e),Oe.applyMatrix4(t),this.setXYZ(e,Oe.x,Oe.y,Oe.z);return this}applyNormalMatrix(t){for(let e=0,i=this.count;e<i;e++)Oe.fromBufferAttribute(this,e),Oe.applyNormalMatrix(t),this.setXYZ(e,Oe.x,Oe.y,Oe.z);return this}transformDirection(t){for(let e=0,i=this.count;e<i;e++)Oe.fromBufferAttribute(this,e),Oe.transformDirection(t),this.setXYZ(e,Oe.x,Oe.y,Oe.z);return this}set(t,e=0){return this.array.set(t,e),this}getComponent(t,e){let i=this.array[t*this.itemSize+e];return this.normalized&&(i=this._denormalize(i)),i}setComponent(t,e,i){return this.normalized&&(i=this._normalize(i)),this.array[t*this.itemSize+e]=i,this}getX(t){let e=this.array[t*this.itemSize];return this.normalized&&(e=this._denormalize(e)),e}setX(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize]=e,this}getY(t){let e=this.array[t*this.itemSize+1];return this.normalized&&(e=this._denormalize(e)),e}setY(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+1]=e,this}getZ(t){let e=this.array[t*this.itemSize+2];return this.normalized&&(e=this._denormalize(e)),e}setZ(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+2]=e,this}getW(t){let e=this.array[t*this.itemSize+3];return this.normalized&&(e=this._denormalize(e)),e}setW(t,e){return this.normalized&&(e=this._normalize(e)),this.array[t*this.itemSize+3]=e,this}setXY(t,e,i){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i)),this.array[t+0]=e,this.array[t+1]=i,this}setXYZ(t,e,i,s){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this}setXYZW(t,e,i,s,r){return t*=this.itemSize,this.normalized&&(e=this._normalize(e),i=this._normalize(i),s=this._normalize(s),r=this._normalize(r)),this.array[t+0]=e,this.array[t+1]=i,this.array[t+2]=s,this.array[t+3]=r,this}onUpload(t){return this.onUploadCallback=t,this}clone(){return new this.constructor(this.array,this.itemSize).copy(this)}toJSON(){let t={itemSize:this.itemSize,type:this.array.constructor.name,array:Array.from(this.array),normalized:this.normalized};return t.name=this.name,t.usage=this.usage,t.gpuType=this.gpuType,t}dispose(){this.dispatchEvent({type:"dispose"})}_denormalize(t){let e=this._normalizationScale;return e!==void 0?Math.max(t/e,-1):kg(t,this.array)}_normalize(t){let e=this._normalizationScale;return e!==void 0?Math.round(t*e):Bg(t,this.array)}};var Wo=class extends He{constructor(t,e,i){super(new Uint16Array(t),e,i)}};var Xo=class extends He{constructor(t,e,i){super(new Uint32Array(t),e,i)}};var $t=class extends He{constructor(t,e,i){super(new Float32Array(t),e,i)}},Uy=new ui,Ao=new N,Kh=new N,hi=class{constructor(t=new N,e=-1){this.isSphere=!0,this.center=t,this.radius=e}set(t,e){return this.center.copy(t),this.radius=e,this}setFromPoints(t,e){let i=this.center;e!==void 0?i.copy(e):Uy.setFromPoints(t).getCenter(i);let s=0;for(let r=0,o=t.length;r<o;r++)s=Math.max(s,i.distanceToSquared(t[r]));return this.radius=Math.sqrt(s),this}copy(t){return this.center.copy(t.center),this.radius=t.radius,this}isEmpty(){return this.radius<0}makeEmpty(){return this.center.set(0,0,0),this.radius=-1,this}containsPoint(t){return t.distanceToSquared(this.center)<=this.radius*this.radius}distanceToPoint(t){return t.distanceTo(this.center)-this.radius}intersectsSphere(t){let e=this.radius+t.radius;return t.center.distanceToSquared(this.center)<=e*e}intersectsBox(t){return t.intersectsSphere(this)}intersectsPlane(t){return Math.abs(t.distanceToPoint(this.center))<=this.radius}clampPoint(t,e){let i=this.center.distanceToSquared(t);return e.copy(t),i>this.radius*this.radius&&(e.sub(this.center).normalize(),e.multiplyScalar(this.radius).add(this.center)),e}getBoundingBox(t){return this.isEmpty()?(t.makeEmpty(),t):(t.set(this.center,this.center),t.expandByScalar(this.radius),t)}applyMatrix4(t){return this.center.applyMatrix4(t),this.radius=this.radius*t.getMaxScaleOnAxis(),this}translate(t){return this.center.add(t),this}expandByPoint(t){if(this.isEmpty())return this.center.copy(t),this.radius=0,this;Ao.subVectors(t,this.center);let e=Ao.lengthSq();if(e>this.radius*this.radius){let i=Math.sqrt(e),s=(i-this.radius)*.5;this.center.addScaledVector(Ao,s/i),this.radius+=s}return this}union(t){return t.isEmpty()?this:this.isEmpty()?(this.copy(t),this):(this.center.equals(t.center)===!0?this.radius=Math.max(this.radius,t.radius):(Kh.subVectors(t.center,this.center).setLength(t.radius),this.expandByPoint(Ao.copy(t.center).add(Kh)),this.expandByPoint(Ao.copy(t.center).sub(Kh))),this)}equals(t){return t.center.equals(this.center)&&t.radius===this.radius}clone(){return new this.constructor().copy(this)}toJSON(){return{radius:this.radius,center:this.center.toArray()}}fromJSON(t){return this.radius=t.radius,this.center.fromArray(t.center),this}},Fy=0,Hn=new ee,jh=new Qe,br=new N,Cn=new ui,Eo=new ui,Ke=new N,he=class n extends ei{constructor(){super(),this.isBufferGeometry=!0,Object.defineProperty(this,"id",{value:Fy++}),this.uuid=zs(),this.name="",this.type="BufferGeometry",this.index=null,this.indirect=null,this.indirectOffset=0,this.attributes={},this.morphAttributes={},this.morphTargetsRelative=!1,this.groups=[],this.boundingBox=null,this.boundingSphere=null,this.drawRange={start:0,count:1/0},this.userData={},this._transformed=!1}getIndex(){return this.index}setIndex(t){return Array.isArray(t)?this.index=new(ay(t)?Xo:Wo)(t,1):this.index=t,this}setIndirect(t,e=0){return this.indirect=t,this.indirectOffset=e,this}getIndirect(){return this.indirect}getAttribute(t){return this.attributes[t]}setAttribute(t,e){return this.attributes[t]=e,this}deleteAttribute(t){return delete this.attributes[t],this}hasAttribute(t){return this.attributes[t]!==void 0}addGroup(t,e,i=0){this.groups.push({start:t,count:e,materialIndex:i})}clearGroups(){this.groups=[]}setDrawRange(t,e){this.drawRange.start=t,this.drawRange.count=e}applyMatrix4(t){let e=this.attributes.position;e!==void 0&&(e.applyMatrix4(t),e.needsUpdate=!0);let i=this.attributes.normal;if(i!==void 0){let r=new kt().getNormalMatrix(t);i.applyNormalMatrix(r),i.needsUpdate=!0}let s=this.attributes.tangent;return s!==void 0&&(s.transformDirection(t),s.needsUpdate=!0),this.boundingBox!==null&&this.computeBoundingBox(),this.boundingSphere!==null&&this.computeBoundingSphere(),this._transformed=!0,this}applyQuaternion(t){return Hn.makeRotationFromQuaternion(t),this.applyMatrix4(Hn),this}rotateX(t){return Hn.makeRotationX(t),this.applyMatrix4(Hn),this}rotateY(t){return Hn.makeRotationY(t),this.applyMatrix4(Hn),this}rotateZ(t){return Hn.makeRotationZ(t),this.applyMatrix4(Hn),this}translate(t,e,i){return Hn.makeTranslation(t,e,i),this.applyMatrix4(Hn),this}scale(t,e,i){return Hn.makeScale(t,e,i),this.applyMatrix4(Hn),this}lookAt(t){return jh.lookAt(t),jh.updateMatrix(),this.applyMatrix4(jh.matrix),this}center(){return this.computeBoundingBox(),this.boundingBox.getCenter(br).negate(),this.translate(br.x,br.y,br.z),this}setFromPoints(t){let e=this.getAttribute("position");if(e===void 0){let i=[];for(let s=0,r=t.length;s<r;s++){let o=t[s];i.push(o.x,o.y,o.z||0)}this.setAttribute("position",new $t(i,3))}else{let i=Math.min(t.length,e.count);for(let s=0;s<i;s++){let r=t[s];e.setXYZ(s,r.x,r.y,r.z||0)}t.length>e.count&&It("BufferGeometry: Buffer size too small for points data. Use .dispose() and create a new geometry."),e.needsUpdate=!0}return this}computeBoundingBox(){this.boundingBox===null&&(this.boundingBox=new ui);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Ft("BufferGeometry.computeBoundingBox(): GLBufferAttribute requires a manual bounding box.",this),this.boundingBox.set(new N(-1/0,-1/0,-1/0),new N(1/0,1/0,1/0));return}if(t!==void 0){if(this.boundingBox.setFromBufferAttribute(t),e)for(let i=0,s=e.length;i<s;i++){let r=e[i];Cn.setFromBufferAttribute(r),this.morphTargetsRelative?(Ke.addVectors(this.boundingBox.min,Cn.min),this.boundingBox.expandByPoint(Ke),Ke.addVectors(this.boundingBox.max,Cn.max),this.boundingBox.expandByPoint(Ke)):(this.boundingBox.expandByPoint(Cn.min),this.boundingBox.expandByPoint(Cn.max))}}else this.boundingBox.makeEmpty();(isNaN(this.boundingBox.min.x)||isNaN(this.boundingBox.min.y)||isNaN(this.boundingBox.min.z))&&Ft('BufferGeometry.computeBoundingBox(): Computed min/max have NaN values. The "position" attribute is likely to have NaN values.',this)}computeBoundingSphere(){this.boundingSphere===null&&(this.boundingSphere=new hi);let t=this.attributes.position,e=this.morphAttributes.position;if(t&&t.isGLBufferAttribute){Ft("BufferGeometry.computeBoundingSphere(): GLBufferAttribute requires a manual bounding sphere.",this),this.boundingSphere.set(new N,1/0);return}if(t){let i=this.boundingSphere.center;if(Cn.setFromBufferAttribute(t),e)for(let r=0,o=e.length;r<o;r++){let a=e[r];Eo.setFromBufferAttribute(a),this.morphTargetsRelative?(Ke.addVectors(Cn.min,Eo.min),Cn.expandByPoint(Ke),Ke.addVectors(Cn.max,Eo.max),Cn.expandByPoint(Ke)):(Cn.expandByPoint(Eo.min),Cn.expandByPoint(Eo.max))}Cn.getCenter(i);let s=0;for(let r=0,o=t.count;r<o;r++)Ke.fromBufferAttribute(t,r),s=Math.max(s,i.distanceToSquared(Ke));if(e)for(let r=0,o=e.length;r<o;r++){let a=e[r],l=this.morphTargetsRelative;for(let c=0,u=a.count;c<u;c++)Ke.fromBufferAttribute(a,c),l&&(br.fromBufferAttribute(t,c),Ke.add(br)),s=Math.max(s,i.distanceToSquared(Ke))}this.boundingSphere.radius=Math.sqrt(s),isNaN(this.boundingSphere.radius)&&Ft('BufferGeometry.computeBoundingSphere(): Computed radius is NaN. The "position" attribute is likely to have NaN values.',this)}}computeTangents(){let t=this.index,e=this.attributes;if(t===null||e.position===void 0||e.normal===void 0||e.uv===void 0){Ft("BufferGeometry: .computeTangents() failed. Missing required attributes (index, position, normal or uv)");return}let i=e.position,s=e.normal,r=e.uv,o=this.getAttribute("tangent");(o===void 0||o.count!==i.count)&&(o=new He(new Float32Array(4*i.count),4),this.setAttribute("tangent",o));let a=[],l=[],c=new Uint8Array(i.count);for(let D=0;D<i.count;D++)a[D]=new N,l[D]=new N;let u=new N,h=new N,d=new N,f=new rt,g=new rt,v=new rt,_=new N,m=new N;function y(D,R,P){c[D]=c[R]=c[P]=1,u.fromBufferAttribute(i,D),h.fromBufferAttribute(i,R),d.fromBufferAttribute(i,P),f.fromBufferAttribute(r,D),g.fromBufferAttribute(r,R),v.fromBufferAttribute(r,P),h.sub(u),d.sub(u),g.sub(f),v.sub(f);let F=1/(g.x*v.y-v.x*g.y);isFinite(F)&&(_.copy(h).multiplyScalar(v.y).addScaledVector(d,-g.y).multiplyScalar(F),m.copy(d).multiplyScalar(g.x).addScaledVector(h,-v.x).multiplyScalar(F),a[D].add(_),a[R].add(_),a[P].add(_),l[D].add(m),l[R].add(m),l[P].add(m))}let M=this.groups;M.length===0&&(M=[{start:0,count:t.count}]);for(let D=0,R=M.length;D<R;++D){let P=M[D],F=P.start,B=P.count;for(let I=F,W=F+B;I<W;I+=3)y(t.getX(I+0),t.getX(I+1),t.getX(I+2))}let b=new N,E=new N,A=new N,x=new N;function T(D){A.fromBufferAttribute(s,D),x.copy(A);let R=a[D];b.copy(R),b.sub(A.multiplyScalar(A.dot(R))).normalize(),E.crossVectors(x,R);let F=E.dot(l[D])<0?-1:1;o.setXYZW(D,b.x,b.y,b.z,F)}for(let D=0,R=i.count;D<R;++D)c[D]&&T(D);this._transformed=!0}computeVertexNormals(){let t=this.index,e=this.getAttribute("position");if(e!==void 0){let i=this.getAttribute("normal");if(i===void 0||i.count!==e.count)i=new He(new Float32Array(e.count*3),3),this.setAttribute("normal",i);else for(let d=0,f=i.count;d<f;d++)i.setXYZ(d,0,0,0);let s=new N,r=new N,o=new N,a=new N,l=new N,c=new N,u=new N,h=new N;if(t)for(let d=0,f=t.count;d<f;d+=3){let g=t.getX(d+0),v=t.getX(d+1),_=t.getX(d+2);s.fromBufferAttribute(e,g),r.fromBufferAttribute(e,v),o.fromBufferAttribute(e,_),u.subVectors(o,r),h.subVectors(s,r),u.cross(h),a.fromBufferAttribute(i,g),l.fromBufferAttribute(i,v),c.fromBufferAttribute(i,_),a.add(u),l.add(u),c.add(u),i.setXYZ(g,a.x,a.y,a.z),i.setXYZ(v,l.x,l.y,l.z),i.setXYZ(_,c.x,c.y,c.z)}else for(let d=0,f=e.count;d<f;d+=3)s.fromBufferAttribute(e,d+0),r.fromBufferAttribute(e,d+1),o.fromBufferAttribute(e,d+2),u.subVectors(o,r),h.subVectors(s,r),u.cross(h),i.setXYZ(d+0,u.x,u.y,u.z),i.setXYZ(d+1,u.x,u.y,u.z),i.setXYZ(d+2,u.x,u.y,u.z);this.normalizeNormals(),i.needsUpdate=!0}}normalizeNormals(){let t=this.attributes.normal;for(let e=0,i=t.count;e<i;e++)Ke.fromBufferAttribute(t,e),Ke.normalize(),t.setXYZ(e,Ke.x,Ke.y,Ke.z)}toNonIndexed(){function t(a,l){let c=a.array,u=a.itemSize,h=a.normalized,d=new c.constructor(l.length*u),f=0,g=0;for(let v=0,_=l.length;v<_;v++){a.isInterleavedBufferAttribute?f=l[v]*a.data.stride+a.offset:f=l[v]*u;for(let m=0;m<u;m++)d[g++]=c[f++]}return new He(d,u,h)}if(this.index===null)return It("BufferGeometry.toNonIndexed(): BufferGeometry is already non-indexed."),this;let e=new n,i=this.index.array,s=this.attributes;for(let a in s){let l=s[a],c=t(l,i);e.setAttribute(a,c)}let r=this.morphAttributes;for(let a in r){let l=[],c=r[a];for(let u=0,h=c.length;u<h;u++){let d=c[u],f=t(d,i);l.push(f)}e.morphAttributes[a]=l}e.morphTargetsRelative=this.morphTargetsRelative;let o=this.groups;for(let a=0,l=o.length;a<l;a++){let c=o[a];e.addGroup(c.start,c.count,c.materialIndex)}return e}toJSON(){let t={metadata:{version:4.7,type:"BufferGeometry",generator:"BufferGeometry.toJSON"}};if(t.uuid=this.uuid,t.type=this.parameters!==void 0&&this._transformed===!0?"BufferGeometry":this.type,t.name=this.name,Object.keys(this.userData).length>0&&(t.userData=this.userData),this.parameters!==void 0&&this._transformed!==!0){let l=this.parameters;for(let c in l)l[c]!==void 0&&(t[c]=l[c]);return t}t.data={attributes:{}};let e=this.index;e!==null&&(t.data.index={type:e.array.constructor.name,array:Array.prototype.slice.call(e.array)});let i=this.attributes;for(let l in i){let c=i[l];t.data.attributes[l]=c.toJSON(t.data)}let s={},r=!1;for(let l in this.morphAttributes){let c=this.morphAttributes[l],u=[];for(let h=0,d=c.length;h<d;h++){let f=c[h];u.push(f.toJSON(t.data))}u.length>0&&(s[l]=u,r=!0)}r&&(t.data.morphAttributes=s,t.data.morphTargetsRelative=this.morphTargetsRelative);let o=this.groups;o.length>0&&(t.data.groups=JSON.parse(JSON.stringify(o)));let a=this.boundingSphere;return a!==null&&(t.data.boundingSphere=a.toJSON()),t}clone(){return new this.constructor().copy(this)}copy(t){this.index=null,this.attributes={},this.morphAttributes={},this.groups=[],this.boundingBox=null,this.boundingSphere=null;let e={};this.name=t.name;let i=t.index;i!==null&&this.setIndex(i.clone());let s=t.attributes;for(let c in s){let u=s[c];this.setAttribute(c,u.clone(e))}let r=t.morphAttributes;for(let c in r){let u=[],h=r[c];for(let d=0,f=h.length;d<f;d++)u.push(h[d].clone(e));this.morphAttributes[c]=u}this.morphTargetsRelative=t.morphTargetsRelative;let o=t.groups;for(let c=0,u=o.length;c<u;c++){let h=o[c];this.addGroup(h.start,h.count,h.materialIndex)}let a=t.boundingBox;a!==null&&(this.boundingBox=a.clone());let l=t.boundingSphere;return l!==null&&(this.boundingSphere=l.clone()),this.drawRange.start=t.drawRange.start,this.drawRange.count=t.drawRange.count,this.userData=t.userData,this._transformed=t._transformed,this}dispose(){this.dispatchEvent({type:"dispose"})}};var Qh=new N,Oy=new N,ky=new kt,Pn=class{constructor(t=new N(1,0,0),e=0){this.isPlane=!0,this.normal=t,this.constant=e}set(t,e){return this.normal.copy(t),this.constant=e,this}setComponents(t,e,i,s){return this.normal.set(t,e,i),this.constant=s,this}setFromNormalAndCoplanarPoint(t,e){return this.normal.copy(t),this.constant=-e.dot(this.normal),this}setFromCoplanarPoints(t,e,i){let s=Qh.subVectors(i,e).cross(Oy.subVectors(t,e)).normalize();return this.setFromNormalAndCoplanarPoint(s,t),this}copy(t){return this.normal.copy(t.normal),this.constant=t.constant,this}normalize(){let t=1/this.normal.length();return this.normal.multiplyScalar(t),this.constant*=t,this}negate(){return this.constant*=-1,this.normal.negate(),this}distanceToPoint(t){return this.normal.dot(t)+this.constant}distanceToSphere(t){return this.distanceToPoint(t.center)-t.radius}projectPoint(t,e){return e.copy(t).addScaledVector(this.normal,-this.distanceToPoint(t))}intersectLine(t,e,i=!0){let s=t.delta(Qh),r=this.normal.dot(s);if(r===0)return this.distanceToPoint(t.start)===0?e.copy(t.start):null;let o=-(t.start.dot(this.normal)+this.constant)/r;return i===!0&&(o<0||o>1)?null:e.copy(t.start).addScaledVector(s,o)}intersectsLine(t){let e=this.distanceToPoint(t.start),i=this.distanceToPoint(t.end);return e<0&&i>0||i<0&&e>0}intersectsBox(t){return t.intersectsPlane(this)}intersectsSphere(t){return t.intersectsPlane(this)}coplanarPoint(t){return t.copy(this.normal).multiplyScalar(-this.constant)}applyMatrix4(t,e){let i=e||ky.getNormalMatrix(t),s=this.coplanarPoint(Qh).applyMatrix4(t),r=this.normal.applyMatrix3(i).normalize();return this.constant=-s.dot(r),this}translate(t){return this.constant-=t.dot(this.normal),this}equals(t){return t.normal.equals(this.normal)&&t.constant===this.constant}clone(){return new this.constructor().copy(this)}toJSON(){return{normal:this.normal.toArray(),constant:this.constant}}fromJSON(t){return this.normal.fromArray(t.normal),this.constant=t.constant,this}},By=0,fi=class extends ei{constructor(){super(),this.isMaterial=!0,Object.defineProperty(this,"id",{value:By++}),this.uuid=zs(),this.name="",this.type="Material",this.blending=Gr,this.side=us,this.vertexColors=!1,this.opacity=1,this.transparent=!1,this.alphaHash=!1,this.blendSrc=Mf,this.blendDst=Sf,this.blendEquation=Os,this.blendSrcAlpha=null,this.blendDstAlpha=null,this.blendEquationAlpha=null,this.blendColor=new Vt(0,0,0),this.blendAlpha=0,this.depthFunc=Cr,this.depthTest=!0,this.depthWrite=!0,this.stencilWriteMask=255,this.stencilFunc=Eg,this.stencilRef=0,this.stencilFuncMask=255,this.stencilFail=Yl,this.stencilZFail=Yl,this.stencilZPass=Yl,this.stencilWrite=!1,this.clippingPlanes=null,this.clipIntersection=!1,this.clipShadows=!1,this.shadowSide=null,this.colorWrite=!0,this.precision=null,this.polygonOffset=!1,this.polygonOffsetFactor=0,this.polygonOffsetUnits=0,this.dithering=!1,this.alphaToCoverage=!1,this.premultipliedAlpha=!1,this.forceSinglePass=!1,this.allowOverride=!0,this.visible=!0,this.toneMapped=!0,this.userData={},this.version=0,this._alphaTest=0}get alphaTest(){return this._alphaTest}set alphaTest(t){this._alphaTest>0!=t>0&&this.version++,this._alphaTest=t}onBeforeRender(){}onBeforeCompile(){}customProgramCacheKey(){return this.onBeforeCompile.toString()}setValues(t){if(t!==void 0)for(let e in t){let i=t[e];if(i===void 0){It(`Material: parameter '${e}' has value of undefined.`);continue}let s=this[e];if(s===void 0){It(`Material: '${e}' is not a property of THREE.${this.type}.`);continue}s&&s.isColor?s.set(i):s&&s.isVector2&&i&&i.isVector2||s&&s.isEuler&&i&&i.isEuler||s&&s.isVector3&&i&&i.isVector3?s.copy(i):this[e]=i}}toJSON(t){let e=t===void 0||typeof t=="string";e&&(t={textures:{},images:{}});let i={metadata:{version:4.7,type:"Material",generator:"Material.toJSON"}};i.uuid=this.uuid,i.type=this.type,i.blending=this.blending,i.side=this.side,i.shadowSide=this.shadowSide,i.vertexColors=this.vertexColors,i.opacity=this.opacity,i.transparent=this.transparent,i.blendSrc=this.blendSrc,i.blendDst=this.blendDst,i.blendEquation=this.blendEquation,i.blendSrcAlpha=this.blendSrcAlpha,i.blendDstAlpha=this.blendDstAlpha,i.blendEquationAlpha=this.blendEquationAlpha,i.blendColor=this.blendColor.getHex(),i.blendAlpha=this.blendAlpha,i.depthFunc=this.depthFunc,i.depthTest=this.depthTest,i.depthWrite=this.depthWrite,i.colorWrite=this.colorWrite,i.clipIntersection=this.clipIntersection,i.clipShadows=this.clipShadows,i.stencilWriteMask=this.stencilWriteMask,i.stencilFunc=this.stencilFunc,i.stencilRef=this.stencilRef,i.stencilFuncMask=this.stencilFuncMask,i.stencilFail=this.stencilFail,i.stencilZFail=this.stencilZFail,i.stencilZPass=this.stencilZPass,i.stencilWrite=this.stencilWrite,i.polygonOffset=this.polygonOffset,i.polygonOffsetFactor=this.polygonOffsetFactor,i.polygonOffsetUnits=this.polygonOffsetUnits,i.dithering=this.dithering,i.alphaTest=this.alphaTest,i.alphaHash=this.alphaHash,i.alphaToCoverage=this.alphaToCoverage,i.premultipliedAlpha=this.premultipliedAlpha,i.forceSinglePass=this.forceSinglePass,i.allowOverride=this.allowOverride,i.visible=this.visible,i.toneMapped=this.toneMapped,i.name=this.name,this.color&&this.color.isColor&&(i.color=this.color.getHex()),this.roughness!==void 0&&(i.roughness=this.roughness),this.metalness!==void 0&&(i.metalness=this.metalness),this.sheen!==void 0&&(i.sheen=this.sheen),this.sheenColor&&this.sheenColor.isColor&&(i.sheenColor=this.sheenColor.getHex()),this.sheenRoughness!==void 0&&(i.sheenRoughness=this.sheenRoughness),this.emissive&&this.emissive.isColor&&(i.emissive=this.emissive.getHex()),this.emissiveIntensity!==void 0&&(i.emissiveIntensity=this.emissiveIntensity),this.specular&&this.specular.isColor&&(i.specular=this.specular.getHex()),this.specularIntensity!==void 0&&(i.specularIntensity=this.specularIntensity),this.specularColor&&this.specularColor.isColor&&(i.specularColor=this.specularColor.getHex()),this.shininess!==void 0&&(i.shininess=this.shininess),this.clearcoat!==void 0&&(i.clearcoat=this.clearcoat),this.clearcoatRoughness!==void 0&&(i.clearcoatRoughness=this.clearcoatRoughness),this.diffuseRoughness!==void 0&&(i.diffuseRoughness=this.diffuseRoughness),this.diffuseRoughnessMap&&this.diffuseRoughnessMap.isTexture&&(i.diffuseRoughnessMap=this.diffuseRoughnessMap.toJSON(t).uuid),this.clearcoatMap&&this.clearcoatMap.isTexture&&(i.clearcoatMap=this.clearcoatMap.toJSON(t).uuid),this.clearcoatRoughnessMap&&this.clearcoatRoughnessMap.isTexture&&(i.clearcoatRoughnessMap=this.clearcoatRoughnessMap.toJSON(t).uuid),this.clearcoatNormalMap&&this.clearcoatNormalMap.isTexture&&(i.clearcoatNormalMap=this.clearcoatNormalMap.toJSON(t).uuid,i.clearcoatNormalScale=this.clearcoatNormalScale.toArray()),this.sheenColorMap&&this.sheenColorMap.isTexture&&(i.sheenColorMap=this.sheenColorMap.toJSON(t).uuid),this.sheenRoughnessMap&&this.sheenRoughnessMap.isTexture&&(i.sheenRoughnessMap=this.sheenRoughnessMap.toJSON(t).uuid),this.dispersion!==void 0&&(i.dispersion=this.dispersion),this.retroreflectivity!==void 0&&(i.retroreflectivity=this.retroreflectivity),this.iridescence!==void 0&&(i.iridescence=this.iridescence),this.iridescenceIOR!==void 0&&(i.iridescenceIOR=this.iridescenceIOR),this.iridescenceThicknessMinimum!==void 0&&(i.iridescenceThicknessMinimum=this.iridescenceThicknessMinimum),this.iridescenceThicknessMaximum!==void 0&&(i.iridescenceThicknessMaximum=this.iridescenceThicknessMaximum),this.iridescenceMap&&this.iridescenceMap.isTexture&&(i.iridescenceMap=this.iridescenceMap.toJSON(t).uuid),this.iridescenceThicknessMap&&this.iridescenceThicknessMap.isTexture&&(i.iridescenceThicknessMap=this.iridescenceThicknessMap.toJSON(t).uuid),this.anisotropy!==void 0&&(i.anisotropy=this.anisotropy),this.anisotropyRotation!==void 0&&(i.anisotropyRotation=this.anisotropyRotation),this.anisotropyMap&&this.anisotropyMap.isTexture&&(i.anisotropyMap=this.anisotropyMap.toJSON(t).uuid),this.map&&this.map.isTexture&&(i.map=this.map.toJSON(t).uuid),this.matcap&&this.matcap.isTexture&&(i.matcap=this.matcap.toJSON(t).uuid),this.alphaMap&&this.alphaMap.isTexture&&(i.alphaMap=this.alphaMap.toJSON(t).uuid),this.lightMap&&this.lightMap.isTexture&&(i.lightMap=this.lightMap.toJSON(t).uuid,i.lightMapIntensity=this.lightMapIntensity),this.aoMap&&this.aoMap.isTexture&&(i.aoMap=this.aoMap.toJSON(t).uuid,i.aoMapIntensity=this.aoMapIntensity),this.bumpMap&&this.bumpMap.isTexture&&(i.bumpMap=this.bumpMap.toJSON(t).uuid,i.bumpScale=this.bumpScale),this.normalMap&&this.normalMap.isTexture&&(i.normalMap=this.normalMap.toJSON(t).uuid,i.normalMapType=this.normalMapType,i.normalScale=this.normalScale.toArray()),this.displacementMap&&this.displacementMap.isTexture&&(i.displacementMap=this.displacementMap.toJSON(t).uuid,i.displacementScale=this.displacementScale,i.displacementBias=this.displacementBias),this.roughnessMap&&this.roughnessMap.isTexture&&(i.roughnessMap=this.roughnessMap.toJSON(t).uuid),this.metalnessMap&&this.metalnessMap.isTexture&&(i.metalnessMap=this.metalnessMap.toJSON(t).uuid),this.emissiveMap&&this.emissiveMap.isTexture&&(i.emissiveMap=this.emissiveMap.toJSON(t).uuid),this.specularMap&&this.specularMap.isTexture&&(i.specularMap=this.specularMap.toJSON(t).uuid),this.specularIntensityMap&&this.specularIntensityMap.isTexture&&(i.specularIntensityMap=this.specularIntensityMap.toJSON(t).uuid),this.specularColorMap&&this.specularColorMap.isTexture&&(i.specularColorMap=this.specularColorMap.toJSON(t).uuid),this.envMap&&this.envMap.isTexture&&(i.envMap=this.envMap.toJSON(t).uuid,this.combine!==void 0&&(i.combine=this.combine)),this.envMapRotation!==void 0&&(i.envMapRotation=this.envMapRotation.toArray()),this.envMapIntensity!==void 0&&(i.envMapIntensity=this.envMapIntensity),this.reflectivity!==void 0&&(i.reflectivity=this.reflectivity),this.refractionRatio!==void 0&&(i.refractionRatio=this.refractionRatio),this.gradientMap&&this.gradientMap.isTexture&&(i.gradientMap=this.gradientMap.toJSON(t).uuid),this.transmission!==void 0&&(i.transmission=this.transmission),this.transmissionMap&&this.transmissionMap.isTexture&&(i.transmissionMap=this.transmissionMap.toJSON(t).uuid),this.thickness!==void 0&&(i.thickness=this.thickness),this.thicknessMap&&this.thicknessMap.isTexture&&(i.thicknessMap=this.thicknessMap.toJSON(t).uuid),this.attenuationDistance!==void 0&&(i.attenuationDistance=this.attenuationDistance),this.attenuationColor!==void 0&&(i.attenuationColor=this.attenuationColor.getHex()),this.size!==void 0&&(i.size=this.size),this.sizeAttenuation!==void 0&&(i.sizeAttenuation=this.sizeAttenuation),Array.isArray(this.clippingPlanes)&&this.clippingPlanes.length>0&&(i.clippingPlanes=this.clippingPlanes.map(r=>r.toJSON())),this.rotation!==void 0&&(i.rotation=this.rotation),this.depthPacking!==void 0&&(i.depthPacking=this.depthPacking),this.linewidth!==void 0&&(i.linewidth=this.linewidth),this.linecap!==void 0&&(i.linecap=this.linecap),this.linejoin!==void 0&&(i.linejoin=this.linejoin),this.dashSize!==void 0&&(i.dashSize=this.dashSize),this.gapSize!==void 0&&(i.gapSize=this.gapSize),this.scale!==void 0&&(i.scale=this.scale),this.wireframe!==void 0&&(i.wireframe=this.wireframe),this.wireframeLinewidth!==void 0&&(i.wireframeLinewidth=this.wireframeLinewidth),this.wireframeLinecap!==void 0&&(i.wireframeLinecap=this.wireframeLinecap),this.wireframeLinejoin!==void 0&&(i.wireframeLinejoin=this.wireframeLinejoin),this.flatShading!==void 0&&(i.flatShading=this.flatShading),this.fog!==void 0&&(i.fog=this.fog),Object.keys(this.userData).length>0&&(i.userData=this.userData);function s(r){let o=[];for(let a in r){let l=r[a];delete l.metadata,o.push(l)}return o}if(e){let r=s(t.textures),o=s(t.images);r.length>0&&(i.textures=r),o.length>0&&(i.images=o)}return i}fromJSON(t,e){if(t.uuid!==void 0&&(this.uuid=t.uuid),t.name!==void 0&&(this.name=t.name),t.color!==void 0&&this.color!==void 0&&this.color.setHex(t.color),t.roughness!==void 0&&(this.roughness=t.roughness),t.metalness!==void 0&&(this.metalness=t.metalness),t.sheen!==void 0&&(this.sheen=t.sheen),t.sheenColor!==void 0&&(this.sheenColor=new Vt().setHex(t.sheenColor)),t.sheenRoughness!==void 0&&(this.sheenRoughness=t.sheenRoughness),t.emissive!==void 0&&this.emissive!==void 0&&this.emissive.setHex(t.emissive),t.specular!==void 0&&this.specular!==void 0&&this.specular.setHex(t.specular),t.specularIntensity!==void 0&&(this.specularIntensity=t.specularIntensity),t.specularColor!==void 0&&this.specularColor!==void 0&&this.specularColor.setHex(t.specularColor),t.shininess!==void 0&&(this.shininess=t.shininess),t.clearcoat!==void 0&&(this.clearcoat=t.clearcoat),t.clearcoatRoughness!==void 0&&(this.clearcoatRoughness=t.clearcoatRoughness),t.diffuseRoughness!==void 0&&(this.diffuseRoughness=t.diffuseRoughness),t.dispersion!==void 0&&(this.dispersion=t.dispersion),t.retroreflectivity!==void 0&&(this.retroreflectivity=t.retroreflectivity),t.iridescence!==void 0&&(this.iridescence=t.iridescence),t.iridescenceIOR!==void 0&&(this.iridescenceIOR=t.iridescenceIOR),t.iridescenceThicknessMinimum!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessMinimum),t.iridescenceThicknessMaximum!==void 0&&(this.iridescenceThicknessMaximum=t.iridescenceThicknessMaximum),t.iridescenceThicknessRange!==void 0&&(this.iridescenceThicknessMinimum=t.iridescenceThicknessRange[0],this.iridescenceThicknessMaximum=t.iridescenceThicknessRange[1]),t.transmission!==void 0&&(this.transmission=t.transmission),t.thickness!==void 0&&(this.thickness=t.thickness),t.attenuationDistance!==void 0&&(this.attenuationDistance=t.attenuationDistance),t.attenuationColor!==void 0&&this.attenuationColor!==void 0&&this.attenuationColor.setHex(t.attenuationColor),t.anisotropy!==void 0&&(this.anisotropy=t.anisotropy),t.anisotropyRotation!==void 0&&(this.anisotropyRotation=t.anisotropyRotation),t.fog!==void 0&&(this.fog=t.fog),t.flatShading!==void 0&&(this.flatShading=t.flatShading),t.blending!==void 0&&(this.blending=t.blending),t.combine!==void 0&&(this.combine=t.combine),t.side!==void 0&&(this.side=t.side),t.shadowSide!==void 0&&(this.shadowSide=t.shadowSide),t.opacity!==void 0&&(this.opacity=t.opacity),t.transparent!==void 0&&(this.transparent=t.transparent),t.alphaTest!==void 0&&(this.alphaTest=t.alphaTest),t.alphaHash!==void 0&&(this.alphaHash=t.alphaHash),t.depthFunc!==void 0&&(this.depthFunc=t.depthFunc),t.depthTest!==void 0&&(this.depthTest=t.depthTest),t.depthWrite!==void 0&&(this.depthWrite=t.depthWrite),t.colorWrite!==void 0&&(this.colorWrite=t.colorWrite),t.clippingPlanes!==void 0&&(this.clippingPlanes=t.clippingPlanes.map(i=>new Pn().fromJSON(i))),t.clipIntersection!==void 0&&(this.clipIntersection=t.clipIntersection),t.clipShadows!==void 0&&(this.clipShadows=t.clipShadows),t.depthPacking!==void 0&&(this.depthPacking=t.depthPacking),t.blendSrc!==void 0&&(this.blendSrc=t.blendSrc),t.blendDst!==void 0&&(this.blendDst=t.blendDst),t.blendEquation!==void 0&&(this.blendEquation=t.blendEquation),t.blendSrcAlpha!==void 0&&(this.blendSrcAlpha=t.blendSrcAlpha),t.blendDstAlpha!==void 0&&(this.blendDstAlpha=t.blendDstAlpha),t.blendEquationAlpha!==void 0&&(this.blendEquationAlpha=t.blendEquationAlpha),t.blendColor!==void 0&&this.blendColor!==void 0&&this.blendColor.setHex(t.blendColor),t.blendAlpha!==void 0&&(this.blendAlpha=t.blendAlpha),t.stencilWriteMask!==void 0&&(this.stencilWriteMask=t.stencilWriteMask),t.stencilFunc!==void 0&&(this.stencilFunc=t.stencilFunc),t.stencilRef!==void 0&&(this.stencilRef=t.stencilRef),t.stencilFuncMask!==void 0&&(this.stencilFuncMask=t.stencilFuncMask),t.stencilFail!==void 0&&(this.stencilFail=t.stencilFail),t.stencilZFail!==void 0&&(this.stencilZFail=t.stencilZFail),t.stencilZPass!==void 0&&(this.stencilZPass=t.stencilZPass),t.stencilWrite!==void 0&&(this.stencilWrite=t.stencilWrite),t.wireframe!==void 0&&(this.wireframe=t.wireframe),t.wireframeLinewidth!==void 0&&(this.wireframeLinewidth=t.wireframeLinewidth),t.wireframeLinecap!==void 0&&(this.wireframeLinecap=t.wireframeLinecap),t.wireframeLinejoin!==void 0&&(this.wireframeLinejoin=t.wireframeLinejoin),t.rotation!==void 0&&(this.rotation=t.rotation),t.linewidth!==void 0&&(this.linewidth=t.linewidth),t.linecap!==void 0&&(this.linecap=t.linecap),t.linejoin!==void 0&&(this.linejoin=t.linejoin),t.dashSize!==void 0&&(this.dashSize=t.dashSize),t.gapSize!==void 0&&(this.gapSize=t.gapSize),t.scale!==void 0&&(this.scale=t.scale),t.polygonOffset!==void 0&&(this.polygonOffset=t.polygonOffset),t.polygonOffsetFactor!==void 0&&(this.polygonOffsetFactor=t.polygonOffsetFactor),t.polygonOffsetUnits!==void 0&&(this.polygonOffsetUnits=t.polygonOffsetUnits),t.dithering!==void 0&&(this.dithering=t.dithering),t.alphaToCoverage!==void 0&&(this.alphaToCoverage=t.alphaToCoverage),t.premultipliedAlpha!==void 0&&(this.premultipliedAlpha=t.premultipliedAlpha),t.forceSinglePass!==void 0&&(this.forceSinglePass=t.forceSinglePass),t.allowOverride!==void 0&&(this.allowOverride=t.allowOverride),t.visible!==void 0&&(this.visible=t.visible),t.toneMapped!==void 0&&(this.toneMapped=t.toneMapped),t.userData!==void 0&&(this.userData=t.userData),t.vertexColors!==void 0&&(typeof t.vertexColors=="number"?this.vertexColors=t.vertexColors>0:this.vertexColors=t.vertexColors),t.size!==void 0&&(this.size=t.size),t.sizeAttenuation!==void 0&&(this.sizeAttenuation=t.sizeAttenuation),t.map!==void 0&&(this.map=e[t.map]||null),t.matcap!==void 0&&(this.matcap=e[t.matcap]||null),t.alphaMap!==void 0&&(this.alphaMap=e[t.alphaMap]||null),t.bumpMap!==void 0&&(this.bumpMap=e[t.bumpMap]||null),t.bumpScale!==void 0&&(this.bumpScale=t.bumpScale),t.normalMap!==void 0&&(this.normalMap=e[t.normalMap]||null),t.normalMapType!==void 0&&(this.normalMapType=t.normalMapType),t.normalScale!==void 0){let i=t.normalScale;Array.isArray(i)===!1&&(i=[i,i]),this.normalScale=new rt().fromArray(i)}return t.displacementMap!==void 0&&(this.displacementMap=e[t.displacementMap]||null),t.displacementScale!==void 0&&(this.displacementScale=t.displacementScale),t.displacementBias!==void 0&&(this.displacementBias=t.displacementBias),t.roughnessMap!==void 0&&(this.roughnessMap=e[t.roughnessMap]||null),t.metalnessMap!==void 0&&(this.metalnessMap=e[t.metalnessMap]||null),t.emissiveMap!==void 0&&(this.emissiveMap=e[t.emissiveMap]||null),t.emissiveIntensity!==void 0&&(this.emissiveIntensity=t.emissiveIntensity),t.specularMap!==void 0&&(this.specularMap=e[t.specularMap]||null),t.specularIntensityMap!==void 0&&(this.specularIntensityMap=e[t.specularIntensityMap]||null),t.specularColorMap!==void 0&&(this.specularColorMap=e[t.specularColorMap]||null),t.envMap!==void 0&&(this.envMap=e[t.envMap]||null),t.envMapRotation!==void 0&&this.envMapRotation.fromArray(t.envMapRotation),t.envMapIntensity!==void 0&&(this.envMapIntensity=t.envMapIntensity),t.reflectivity!==void 0&&(this.reflectivity=t.reflectivity),t.refractionRatio!==void 0&&(this.refractionRatio=t.refractionRatio),t.lightMap!==void 0&&(this.lightMap=e[t.lightMap]||null),t.lightMapIntensity!==void 0&&(this.lightMapIntensity=t.lightMapIntensity),t.aoMap!==void 0&&(this.aoMap=e[t.aoMap]||null),t.aoMapIntensity!==void 0&&(this.aoMapIntensity=t.aoMapIntensity),t.gradientMap!==void 0&&(this.gradientMap=e[t.gradientMap]||null),t.clearcoatMap!==void 0&&(this.clearcoatMap=e[t.clearcoatMap]||null),t.clearcoatRoughnessMap!==void 0&&(this.clearcoatRoughnessMap=e[t.clearcoatRoughnessMap]||null),t.clearcoatNormalMap!==void 0&&(this.clearcoatNormalMap=e[t.clearcoatNormalMap]||null),t.clearcoatNormalScale!==void 0&&(this.clearcoatNormalScale=new rt().fromArray(t.clearcoatNormalScale)),t.diffuseRoughnessMap!==void 0&&(this.diffuseRoughnessMap=e[t.diffuseRoughnessMap]||null),t.iridescenceMap!==void 0&&(this.iridescenceMap=e[t.iridescenceMap]||null),t.iridescenceThicknessMap!==void 0&&(this.iridescenceThicknessMap=e[t.iridescenceThicknessMap]||null),t.transmissionMap!==void 0&&(this.transmissionMap=e[t.transmissionMap]||null),t.thicknessMap!==void 0&&(this.thicknessMap=e[t.thicknessMap]||null),t.anisotropyMap!==void 0&&(this.anisotropyMap=e[t.anisotropyMap]||null),t.sheenColorMap!==void 0&&(this.sheenColorMap=e[t.sheenColorMap]||null),t.sheenRoughnessMap!==void 0&&(this.sheenRoughnessMap=e[t.sheenRoughnessMap]||null),this}clone(){return new this.constructor().copy(this)}copy(t){this.name=t.name,this.blending=t.blending,this.side=t.side,this.vertexColors=t.vertexColors,this.opacity=t.opacity,this.transparent=t.transparent,this.blendSrc=t.blendSrc,this.blendDst=t.blendDst,this.blendEquation=t.blendEquation,this.blendSrcAlpha=t.blendSrcAlpha,this.blendDstAlpha=t.blendDstAlpha,this.blendEquationAlpha=t.blendEquationAlpha,this.blendColor.copy(t.blendColor),this.blendAlpha=t.blendAlpha,this.depthFunc=t.depthFunc,this.depthTest=t.depthTest,this.depthWrite=t.depthWrite,this.stencilWriteMask=t.stencilWriteMask,this.stencilFunc=t.stencilFunc,this.stencilRef=t.stencilRef,this.stencilFuncMask=t.stencilFuncMask,this.stencilFail=t.stencilFail,this.stencilZFail=t.stencilZFail,this.stencilZPass=t.stencilZPass,this.stencilWrite=t.stencilWrite;let e=t.clippingPlanes,i=null;if(e!==null){let s=e.length;i=new Array(s);for(let r=0;r!==s;++r)i[r]=e[r].clone()}return this.clippingPlanes=i,this.clipIntersection=t.clipIntersection,this.clipShadows=t.clipShadows,this.shadowSide=t.shadowSide,this.colorWrite=t.colorWrite,this.precision=t.precision,this.polygonOffset=t.polygonOffset,this.polygonOffsetFactor=t.polygonOffsetFactor,this.polygonOffsetUnits=t.polygonOffsetUnits,this.dithering=t.dithering,this.alphaTest=t.alphaTest,this.alphaHash=t.alphaHash,this.alphaToCoverage=t.alphaToCoverage,this.premultipliedAlpha=t.premultipliedAlpha,this.forceSinglePass=t.forceSinglePass,this.allowOverride=t.allowOverride,this.visible=t.visible,this.toneMapped=t.toneMapped,this.userData=JSON.parse(JSON.stringify(t.userData)),this}dispose(){this.dispatchEvent({type:"dispose"})}set needsUpdate(t){t===!0&&this.version++}};var Ii=new N,tf=new N,El=new N,Cl=new N,ts=class{constructor(t=new N,e=new N(0,0,-1)){this.origin=t,this.direction=e}set(t,e){return this.origin.copy(t),this.direction.copy(e),this}copy(t){return this.origin.copy(t.origin),this.direction.copy(t.direction),this}at(t,e){return e.copy(this.origin).addScaledVector(this.direction,t)}lookAt(t){return this.direction.copy(t).sub(this.origin).normalize(),this}recast(t){return this.origin.copy(this.at(t,Ii)),this}closestPointToPoint(t,e){e.subVectors(t,this.origin);let i=e.dot(this.direction);return i<0?e.copy(this.origin):e.copy(this.origin).addScaledVector(this.direction,i)}distanceToPoint(t){return Math.sqrt(this.distanceSqToPoint(t))}distanceSqToPoint(t){let e=Ii.subVectors(t,this.origin).dot(this.direction);return e<0?this.origin.distanceToSquared(t):(Ii.copy(this.origin).addScaledVector(this.direction,e),Ii.distanceToSquared(t))}distanceSqToSegment(t,e,i,s){tf.copy(t).add(e).multiplyScalar(.5),El.copy(e).sub(t).normalize(),Cl.copy(this.origin).sub(tf);let r=t.distanceTo(e)*.5,o=-this.direction.dot(El),a=Cl.dot(this.direction),l=-Cl.dot(El),c=Cl.lengthSq(),u=Math.abs(1-o*o),h,d,f,g;if(u>0)if(h=o*l-a,d=o*a-l,g=r*u,h>=0)if(d>=-g)if(d<=g){let v=1/u;h*=v,d*=v,f=h*(h+o*d+2*a)+d*(o*h+d+2*l)+c}else d=r,h=Math.max(0,-(o*d+a)),f=-h*h+d*(d+2*l)+c;else d=-r,h=Math.max(0,-(o*d+a)),f=-h*h+d*(d+2*l)+c;else d<=-g?(h=Math.max(0,-(-o*r+a)),d=h>0?-r:Math.min(Math.max(-r,-l),r),f=-h*h+d*(d+2*l)+c):d<=g?(h=0,d=Math.min(Math.max(-r,-l),r),f=d*(d+2*l)+c):(h=Math.max(0,-(o*r+a)),d=h>0?r:Math.min(Math.max(-r,-l),r),f=-h*h+d*(d+2*l)+c);else d=o>0?-r:r,h=Math.max(0,-(o*d+a)),f=-h*h+d*(d+2*l)+c;return i&&i.copy(this.origin).addScaledVector(this.direction,h),s&&s.copy(tf).addScaledVector(El,d),f}intersectSphere(t,e){if(t.radius<0)return null;Ii.subVectors(t.center,this.origin);let i=Ii.dot(this.direction),s=Ii.dot(Ii)-i*i,r=t.radius*t.radius;if(s>r)return null;let o=Math.sqrt(r-s),a=i-o,l=i+o;return l<0?null:a<0?this.at(l,e):this.at(a,e)}intersectsSphere(t){return t.radius<0?!1:this.distanceSqToPoint(t.center)<=t.radius*t.radius}distanceToPlane(t){let e=t.normal.dot(this.direction);if(e===0)return t.distanceToPoint(this.origin)===0?0:null;let i=-(this.origin.dot(t.normal)+t.constant)/e;return i>=0?i:null}intersectPlane(t,e){let i=this.distanceToPlane(t);return i===null?null:this.at(i,e)}intersectsPlane(t){let e=t.distanceToPoint(this.origin);return e===0||t.normal.dot(this.direction)*e<0}intersectBox(t,e){let i,s,r,o,a,l,c=1/this.direction.x,u=1/this.direction.y,h=1/this.direction.z,d=this.origin;return c>=0?(i=(t.min.x-d.x)*c,s=(t.max.x-d.x)*c):(i=(t.max.x-d.x)*c,s=(t.min.x-d.x)*c),u>=0?(r=(t.min.y-d.y)*u,o=(t.max.y-d.y)*u):(r=(t.max.y-d.y)*u,o=(t.min.y-d.y)*u),i>o||r>s||((r>i||isNaN(i))&&(i=r),(o<s||isNaN(s))&&(s=o),h>=0?(a=(t.min.z-d.z)*h,l=(t.max.z-d.z)*h):(a=(t.max.z-d.z)*h,l=(t.min.z-d.z)*h),i>l||a>s)||((a>i||i!==i)&&(i=a),(l<s||s!==s)&&(s=l),s<0)?null:this.at(i>=0?i:s,e)}intersectsBox(t){return this.intersectBox(t,Ii)!==null}intersectTriangle(t,e,i,s,r){let o=this.origin,a=this.direction,l=a.x,c=a.y,u=a.z,h=t.x-o.x,d=t.y-o.y,f=t.z-o.z,g=e.x-o.x,v=e.y-o.y,_=e.z-o.z,m=i.x-o.x,y=i.y-o.y,M=i.z-o.z,b=Math.abs(l),E=Math.abs(c),A=Math.abs(u),x,T,D,R,P,F,B,I,W,X,k,Q;if(b>=E&&b>=A?(D=l,F=h,W=g,Q=m,l>=0?(x=c,T=u,R=d,P=f,B=v,I=_,X=y,k=M):(x=u,T=c,R=f,P=d,B=_,I=v,X=M,k=y)):E>=A?(D=c,F=d,W=v,Q=y,c>=0?(x=u,T=l,R=f,P=h,B=_,I=g,X=M,k=m):(x=l,T=u,R=h,P=f,B=g,I=_,X=m,k=M)):(D=u,F=f,W=_,Q=M,u>=0?(x=l,T=c,R=h,P=d,B=g,I=v,X=m,k=y):(x=c,T=l,R=d,P=h,B=v,I=g,X=y,k=m)),D===0)return null;let G=x/D,tt=T/D,et=1/D,bt=R-G*F,Lt=P-tt*F,Z=B-G*W,dt=I-tt*W,xt=X-G*Q,Ct=k-tt*Q,mt=xt*dt-Ct*Z,Ot=bt*Ct-Lt*xt,Pe=Z*Lt-dt*bt;if(s){if(mt<0||Ot<0||Pe<0)return null}else if((mt<0||Ot<0||Pe<0)&&(mt>0||Ot>0||Pe>0))return null;let Dt=mt+Ot+Pe;if(Dt===0)return null;let ne=et*(mt*F+Ot*W+Pe*Q);return(Dt>0?ne<0:ne>0)?null:this.at(ne/Dt,r)}applyMatrix4(t){return this.origin.applyMatrix4(t),this.direction.transformDirection(t),this}equals(t){return t.origin.equals(this.origin)&&t.direction.equals(this.direction)}clone(){return new this.constructor().copy(this)}},tn=class extends fi{constructor(t){super(),this.isMeshBasicMaterial=!0,this.type="MeshBasicMaterial",this.color=new Vt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ni,this.combine=Lc,this.reflectivity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.fog=t.fog,this}},Rm=new ee,Is=new ts,Rl=new hi,Pm=new N,Pl=new N,Il=new N,Dl=new N,ef=new N,Ll=new N,Im=new N,Nl=new N,Le=class extends Qe{constructor(t=new he,e=new tn){super(),this.isMesh=!0,this.type="Mesh",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.count=1,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}getVertexPosition(t,e){let i=this.geometry,s=i.attributes.position,r=i.morphAttributes.position,o=i.morphTargetsRelative;e.fromBufferAttribute(s,t);let a=this.morphTargetInfluences;if(r&&a){Ll.set(0,0,0);for(let l=0,c=r.length;l<c;l++){let u=a[l],h=r[l];u!==0&&(ef.fromBufferAttribute(h,t),o?Ll.addScaledVector(ef,u):Ll.addScaledVector(ef.sub(e),u))}e.add(Ll)}return e}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.material,r=this.matrixWorld;s!==void 0&&(i.boundingSphere===null&&i.computeBoundingSphere(),Rl.copy(i.boundingSphere),Rl.applyMatrix4(r),Is.copy(t.ray).recast(t.near),!(Rl.containsPoint(Is.origin)===!1&&(Is.intersectSphere(Rl,Pm)===null||Is.origin.distanceToSquared(Pm)>(t.far-t.near)**2))&&(Rm.copy(r).invert(),Is.copy(t.ray).applyMatrix4(Rm),!(i.boundingBox!==null&&Is.intersectsBox(i.boundingBox)===!1)&&this._computeIntersections(t,e,Is)))}_computeIntersections(t,e,i){let s,r=this.geometry,o=this.material,a=r.index,l=r.attributes.position,c=r.attributes.uv,u=r.attributes.uv1,h=r.attributes.normal,d=r.groups,f=r.drawRange;if(a!==null)if(Array.isArray(o))for(let g=0,v=d.length;g<v;g++){let _=d[g],m=o[_.materialIndex],y=Math.max(_.start,f.start),M=Math.min(a.count,Math.min(_.start+_.count,f.start+f.count));for(let b=y,E=M;b<E;b+=3){let A=a.getX(b),x=a.getX(b+1),T=a.getX(b+2);s=Ul(this,m,t,i,c,u,h,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=_.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),v=Math.min(a.count,f.start+f.count);for(let _=g,m=v;_<m;_+=3){let y=a.getX(_),M=a.getX(_+1),b=a.getX(_+2);s=Ul(this,o,t,i,c,u,h,y,M,b),s&&(s.faceIndex=Math.floor(_/3),e.push(s))}}else if(l!==void 0)if(Array.isArray(o))for(let g=0,v=d.length;g<v;g++){let _=d[g],m=o[_.materialIndex],y=Math.max(_.start,f.start),M=Math.min(l.count,Math.min(_.start+_.count,f.start+f.count));for(let b=y,E=M;b<E;b+=3){let A=b,x=b+1,T=b+2;s=Ul(this,m,t,i,c,u,h,A,x,T),s&&(s.faceIndex=Math.floor(b/3),s.face.materialIndex=_.materialIndex,e.push(s))}}else{let g=Math.max(0,f.start),v=Math.min(l.count,f.start+f.count);for(let _=g,m=v;_<m;_+=3){let y=_,M=_+1,b=_+2;s=Ul(this,o,t,i,c,u,h,y,M,b),s&&(s.faceIndex=Math.floor(_/3),e.push(s))}}}};function zy(n,t,e,i,s,r,o,a){let l;if(t.side===vn?l=i.intersectTriangle(o,r,s,!0,a):l=i.intersectTriangle(s,r,o,t.side===us,a),l===null)return null;Nl.copy(a),Nl.applyMatrix4(n.matrixWorld);let c=e.ray.origin.distanceTo(Nl);return c<e.near||c>e.far?null:{distance:c,point:Nl.clone(),object:n}}function Ul(n,t,e,i,s,r,o,a,l,c){n.getVertexPosition(a,Pl),n.getVertexPosition(l,Il),n.getVertexPosition(c,Dl);let u=zy(n,t,e,i,Pl,Il,Dl,Im);if(u){let h=new N;Qi.getBarycoord(Im,Pl,Il,Dl,h),s&&(u.uv=Qi.getInterpolatedAttribute(s,a,l,c,h,new rt)),r&&(u.uv1=Qi.getInterpolatedAttribute(r,a,l,c,h,new rt)),o&&(u.normal=Qi.getInterpolatedAttribute(o,a,l,c,h,new N),u.normal.dot(i.direction)>0&&u.normal.multiplyScalar(-1));let d={a,b:l,c,normal:new N,materialIndex:0};Qi.getNormal(Pl,Il,Dl,d.normal),u.face=d,u.barycoord=h}return u}var qo=class extends bn{constructor(t=null,e=1,i=1,s,r,o,a,l,c=je,u=je,h,d){super(null,o,a,l,c,u,s,r,h,d),this.isDataTexture=!0,this.image={data:t,width:e,height:i},this.generateMipmaps=!1,this.flipY=!1,this.unpackAlignment=1}};var Nr=class extends He{constructor(t,e,i,s=1){super(t,e,i),this.isInstancedBufferAttribute=!0,this.meshPerAttribute=s}copy(t){return super.copy(t),this.meshPerAttribute=t.meshPerAttribute,this}toJSON(){let t=super.toJSON();return t.meshPerAttribute=this.meshPerAttribute,t.isInstancedBufferAttribute=!0,t}},Mr=new ee,Dm=new ee,Fl=[],Lm=new ui,Vy=new ee,Co=new Le,Ro=new hi,$o=class extends Le{constructor(t,e,i){super(t,e),this.isInstancedMesh=!0,this.instanceMatrix=new Nr(new Float32Array(i*16),16),this.instanceColor=null,this.morphTexture=null,this.count=i,this.boundingBox=null,this.boundingSphere=null;for(let s=0;s<i;s++)this.setMatrixAt(s,Vy)}computeBoundingBox(){let t=this.geometry,e=this.count;this.boundingBox===null&&(this.boundingBox=new ui),t.boundingBox===null&&t.computeBoundingBox(),this.boundingBox.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,Mr),Lm.copy(t.boundingBox).applyMatrix4(Mr),this.boundingBox.union(Lm)}computeBoundingSphere(){let t=this.geometry,e=this.count;this.boundingSphere===null&&(this.boundingSphere=new hi),t.boundingSphere===null&&t.computeBoundingSphere(),this.boundingSphere.makeEmpty();for(let i=0;i<e;i++)this.getMatrixAt(i,Mr),Ro.copy(t.boundingSphere).applyMatrix4(Mr),this.boundingSphere.union(Ro)}copy(t,e){return super.copy(t,e),this.instanceMatrix.copy(t.instanceMatrix),this.morphTexture=t.morphTexture!==null?t.morphTexture.clone():null,this.instanceColor=t.instanceColor!==null?t.instanceColor.clone():null,this.count=t.count,this.boundingBox=t.boundingBox!==null?t.boundingBox.clone():null,this.boundingSphere=t.boundingSphere!==null?t.boundingSphere.clone():null,this}getColorAt(t,e){return this.instanceColor===null?e.setRGB(1,1,1):e.fromArray(this.instanceColor.array,t*3)}getMatrixAt(t,e){return e.fromArray(this.instanceMatrix.array,t*16)}getMorphAt(t,e){let i=e.morphTargetInfluences,s=this.morphTexture.source.data.data,r=i.length+1,o=t*r+1;for(let a=0;a<i.length;a++)i[a]=s[o+a]}raycast(t,e){let i=this.matrixWorld,s=this.count;if(Co.geometry=this.geometry,Co.material=this.material,Co.material!==void 0&&(this.boundingSphere===null&&this.computeBoundingSphere(),Ro.copy(this.boundingSphere),Ro.applyMatrix4(i),t.ray.intersectsSphere(Ro)!==!1))for(let r=0;r<s;r++){this.getMatrixAt(r,Mr),Dm.multiplyMatrices(i,Mr),Co.matrixWorld=Dm,Co.raycast(t,Fl);for(let o=0,a=Fl.length;o<a;o++){let l=Fl[o];l.instanceId=r,l.object=this,e.push(l)}Fl.length=0}}setColorAt(t,e){return this.instanceColor===null&&(this.instanceColor=new Nr(new Float32Array(this.instanceMatrix.count*3).fill(1),3)),e.toArray(this.instanceColor.array,t*3),this}setMatrixAt(t,e){return e.toArray(this.instanceMatrix.array,t*16),this}setMorphAt(t,e){let i=e.morphTargetInfluences,s=i.length+1;this.morphTexture===null&&(this.morphTexture=new qo(new Float32Array(s*this.count),s,this.count,zc,Xn));let r=this.morphTexture.source.data.data,o=0;for(let c=0;c<i.length;c++)o+=i[c];let a=this.geometry.morphTargetsRelative?1:1-o,l=s*t;return r[l]=a,r.set(i,l+1),this}updateMorphTargets(){}dispose(){super.dispose(),this.instanceMatrix.dispose(),this.instanceColor!==null&&this.instanceColor.dispose(),this.morphTexture!==null&&(this.morphTexture.dispose(),this.morphTexture=null)}},Ds=new hi,Gy=new rt(.5,.5),Ol=new N,es=class{constructor(t=new Pn,e=new Pn,i=new Pn,s=new Pn,r=new Pn,o=new Pn){this.planes=[t,e,i,s,r,o]}set(t,e,i,s,r,o){let a=this.planes;return a[0].copy(t),a[1].copy(e),a[2].copy(i),a[3].copy(s),a[4].copy(r),a[5].copy(o),this}copy(t){let e=this.planes;for(let i=0;i<6;i++)e[i].copy(t.planes[i]);return this}setFromProjectionMatrix(t,e=Wn,i=!1){let s=this.planes,r=t.elements,o=r[0],a=r[1],l=r[2],c=r[3],u=r[4],h=r[5],d=r[6],f=r[7],g=r[8],v=r[9],_=r[10],m=r[11],y=r[12],M=r[13],b=r[14],E=r[15];if(s[0].setComponents(c-o,f-u,m-g,E-y).normalize(),s[1].setComponents(c+o,f+u,m+g,E+y).normalize(),s[2].setComponents(c+a,f+h,m+v,E+M).normalize(),s[3].setComponents(c-a,f-h,m-v,E-M).normalize(),i)s[4].setComponents(l,d,_,b).normalize(),s[5].setComponents(c-l,f-d,m-_,E-b).normalize();else if(s[4].setComponents(c-l,f-d,m-_,E-b).normalize(),e===Wn)s[5].setComponents(c+l,f+d,m+_,E+b).normalize();else if(e===Rr)s[5].setComponents(l,d,_,b).normalize();else throw new Error("THREE.Frustum.setFromProjectionMatrix(): Invalid coordinate system: "+e);return this}intersectsObject(t){if(t.boundingSphere!==void 0)t.boundingSphere===null&&t.computeBoundingSphere(),Ds.copy(t.boundingSphere).applyMatrix4(t.matrixWorld);else{let e=t.geometry;e.boundingSphere===null&&e.computeBoundingSphere(),Ds.copy(e.boundingSphere).applyMatrix4(t.matrixWorld)}return this.intersectsSphere(Ds)}intersectsSprite(t){Ds.center.set(0,0,0);let e=Gy.distanceTo(t.center);return Ds.radius=.7071067811865476+e,Ds.applyMatrix4(t.matrixWorld),this.intersectsSphere(Ds)}intersectsSphere(t){let e=this.planes,i=t.center,s=-t.radius;for(let r=0;r<6;r++)if(e[r].distanceToPoint(i)<s)return!1;return!0}intersectsBox(t){let e=this.planes;for(let i=0;i<6;i++){let s=e[i];if(Ol.x=s.normal.x>0?t.max.x:t.min.x,Ol.y=s.normal.y>0?t.max.y:t.min.y,Ol.z=s.normal.z>0?t.max.z:t.min.z,s.distanceToPoint(Ol)<0)return!1}return!0}containsPoint(t){let e=this.planes;for(let i=0;i<6;i++)if(e[i].distanceToPoint(t)<0)return!1;return!0}clone(){return new this.constructor().copy(this)}},Nm=new ee,lc=class n{constructor(){this.coordinateSystem=Wn,this._frustums=[],this._count=0}setFromArrayCamera(t){let e=t.cameras,i=this._frustums;for(let s=0;s<e.length;s++){let r=e[s];Nm.multiplyMatrices(r.projectionMatrix,r.matrixWorldInverse),i[s]===void 0&&(i[s]=new es),i[s].setFromProjectionMatrix(Nm,r.coordinateSystem,r.reversedDepth)}return this._count=e.length,this}getFrustum(t){return this._frustums[t]}intersectsObject(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsObject(t))return!0;return!1}intersectsSprite(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSprite(t))return!0;return!1}intersectsSphere(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsSphere(t))return!0;return!1}intersectsBox(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].intersectsBox(t))return!0;return!1}containsPoint(t){let e=this._frustums;for(let i=0;i<this._count;i++)if(e[i].containsPoint(t))return!0;return!1}copy(t){this.coordinateSystem=t.coordinateSystem;let e=this._frustums,i=t._frustums;for(let s=0;s<t._count;s++)e[s]===void 0&&(e[s]=new es),e[s].copy(i[s]);return this._count=t._count,this}clone(){return new n().copy(this)}};var di=class extends fi{constructor(t){super(),this.isLineBasicMaterial=!0,this.type="LineBasicMaterial",this.color=new Vt(16777215),this.map=null,this.linewidth=1,this.linecap="round",this.linejoin="round",this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.linewidth=t.linewidth,this.linecap=t.linecap,this.linejoin=t.linejoin,this.fog=t.fog,this}},cc=new N,uc=new N,Um=new ee,Po=new ts,kl=new hi,nf=new N,Fm=new N,ns=class extends Qe{constructor(t=new he,e=new di){super(),this.isLine=!0,this.type="Line",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[0];for(let s=1,r=e.count;s<r;s++)cc.fromBufferAttribute(e,s-1),uc.fromBufferAttribute(e,s),i[s]=i[s-1],i[s]+=cc.distanceTo(uc);t.setAttribute("lineDistance",new $t(i,1))}else It("Line.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Line.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),kl.copy(i.boundingSphere),kl.applyMatrix4(s),kl.radius+=r,t.ray.intersectsSphere(kl)===!1)return;Um.copy(s).invert(),Po.copy(t.ray).applyMatrix4(Um);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=this.isLineSegments?2:1,u=i.index,d=i.attributes.position;if(u!==null){let f=Math.max(0,o.start),g=Math.min(u.count,o.start+o.count);for(let v=f,_=g-1;v<_;v+=c){let m=u.getX(v),y=u.getX(v+1),M=Bl(this,t,Po,l,m,y,v);M&&e.push(M)}if(this.isLineLoop){let v=u.getX(g-1),_=u.getX(f),m=Bl(this,t,Po,l,v,_,g-1);m&&e.push(m)}}else{let f=Math.max(0,o.start),g=Math.min(d.count,o.start+o.count);for(let v=f,_=g-1;v<_;v+=c){let m=Bl(this,t,Po,l,v,v+1,v);m&&e.push(m)}if(this.isLineLoop){let v=Bl(this,t,Po,l,g-1,f,g-1);v&&e.push(v)}}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function Bl(n,t,e,i,s,r,o){let a=n.geometry.attributes.position;if(cc.fromBufferAttribute(a,s),uc.fromBufferAttribute(a,r),e.distanceSqToSegment(cc,uc,nf,Fm)>i)return;nf.applyMatrix4(n.matrixWorld);let c=t.ray.origin.distanceTo(nf);if(!(c<t.near||c>t.far))return{distance:c,point:Fm.clone().applyMatrix4(n.matrixWorld),index:o,face:null,faceIndex:null,barycoord:null,object:n}}var Om=new N,km=new N,Ur=class extends ns{constructor(t,e){super(t,e),this.isLineSegments=!0,this.type="LineSegments"}computeLineDistances(){let t=this.geometry;if(t.index===null){let e=t.attributes.position,i=[];for(let s=0,r=e.count;s<r;s+=2)Om.fromBufferAttribute(e,s),km.fromBufferAttribute(e,s+1),i[s]=s===0?0:i[s-1],i[s+1]=i[s]+Om.distanceTo(km);t.setAttribute("lineDistance",new $t(i,1))}else It("LineSegments.computeLineDistances(): Computation only possible with non-indexed BufferGeometry.");return this}};var hc=class extends fi{constructor(t){super(),this.isPointsMaterial=!0,this.type="PointsMaterial",this.color=new Vt(16777215),this.map=null,this.alphaMap=null,this.size=1,this.sizeAttenuation=!0,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.alphaMap=t.alphaMap,this.size=t.size,this.sizeAttenuation=t.sizeAttenuation,this.fog=t.fog,this}},Bm=new ee,ff=new ts,zl=new hi,Vl=new N,Yo=class extends Qe{constructor(t=new he,e=new hc){super(),this.isPoints=!0,this.type="Points",this.geometry=t,this.material=e,this.morphTargetDictionary=void 0,this.morphTargetInfluences=void 0,this.updateMorphTargets()}copy(t,e){return super.copy(t,e),t.morphTargetInfluences!==void 0?this.morphTargetInfluences=t.morphTargetInfluences.slice():this.morphTargetInfluences=void 0,t.morphTargetDictionary!==void 0?this.morphTargetDictionary=Object.assign({},t.morphTargetDictionary):this.morphTargetDictionary=void 0,this.material=Array.isArray(t.material)?t.material.slice():t.material,this.geometry=t.geometry,this}intersectsFrustum(t){return t.intersectsObject(this)}raycast(t,e){let i=this.geometry,s=this.matrixWorld,r=t.params.Points.threshold,o=i.drawRange;if(i.boundingSphere===null&&i.computeBoundingSphere(),zl.copy(i.boundingSphere),zl.applyMatrix4(s),zl.radius+=r,t.ray.intersectsSphere(zl)===!1)return;Bm.copy(s).invert(),ff.copy(t.ray).applyMatrix4(Bm);let a=r/((this.scale.x+this.scale.y+this.scale.z)/3),l=a*a,c=i.index,h=i.attributes.position;if(c!==null){let d=Math.max(0,o.start),f=Math.min(c.count,o.start+o.count);for(let g=d,v=f;g<v;g++){let _=c.getX(g);Vl.fromBufferAttribute(h,_),zm(Vl,_,l,s,t,e,this)}}else{let d=Math.max(0,o.start),f=Math.min(h.count,o.start+o.count);for(let g=d,v=f;g<v;g++)Vl.fromBufferAttribute(h,g),zm(Vl,g,l,s,t,e,this)}}updateMorphTargets(){let e=this.geometry.morphAttributes,i=Object.keys(e);if(i.length>0){let s=e[i[0]];if(s!==void 0){this.morphTargetInfluences=[],this.morphTargetDictionary={};for(let r=0,o=s.length;r<o;r++){let a=s[r].name||String(r);this.morphTargetInfluences.push(0),this.morphTargetDictionary[a]=r}}}}};function zm(n,t,e,i,s,r,o){let a=ff.distanceSqToPoint(n);if(a<e){let l=new N;ff.closestPointToPoint(n,l),l.applyMatrix4(i);let c=s.ray.origin.distanceTo(l);if(c<s.near||c>s.far)return;r.push({distance:c,distanceToRay:Math.sqrt(a),point:l,index:t,face:null,faceIndex:null,barycoord:null,object:o})}}var Zo=class extends bn{constructor(t=[],e=ks,i,s,r,o,a,l,c,u){super(t,e,i,s,r,o,a,l,c,u),this.isCubeTexture=!0,this.flipY=!1}get images(){return this.image}set images(t){this.image=t}};var Ui=class extends bn{constructor(t,e,i=ni,s,r,o,a=je,l=je,c,u=Li,h=1){if(u!==Li&&u!==ki)throw new Error("THREE.DepthTexture: format must be either THREE.DepthFormat or THREE.DepthStencilFormat");let d={width:t,height:e,depth:h};super(d,s,r,o,a,l,u,i,c),this.isDepthTexture=!0,this.flipY=!1,this.generateMipmaps=!1,this.compareFunction=null}copy(t){return super.copy(t),this.source=new Dr(Object.assign({},t.image)),this.compareFunction=t.compareFunction,this}toJSON(t){let e=super.toJSON(t);return e.compareFunction=this.compareFunction,e}},Jo=class extends Ui{constructor(t,e=ni,i=ks,s,r,o=je,a=je,l,c=Li){let u={width:t,height:t,depth:1},h=[u,u,u,u,u,u];super(t,t,e,i,s,r,o,a,l,c),this.image=h,this.isCubeDepthTexture=!0,this.isCubeTexture=!0}get images(){return this.image}set images(t){this.image=t}},Ko=class extends bn{constructor(t=null){super(),this.sourceTexture=t,this.isExternalTexture=!0}copy(t){return super.copy(t),this.sourceTexture=t.sourceTexture,this}},Mn=class n extends he{constructor(t=1,e=1,i=1,s=1,r=1,o=1){super(),this.type="BoxGeometry",this.parameters={width:t,height:e,depth:i,widthSegments:s,heightSegments:r,depthSegments:o};let a=this;s=Math.floor(s),r=Math.floor(r),o=Math.floor(o);let l=[],c=[],u=[],h=[],d=0,f=0;g("z","y","x",-1,-1,i,e,t,o,r,0),g("z","y","x",1,-1,i,e,-t,o,r,1),g("x","z","y",1,1,t,i,e,s,o,2),g("x","z","y",1,-1,t,i,-e,s,o,3),g("x","y","z",1,-1,t,e,i,s,r,4),g("x","y","z",-1,-1,t,e,-i,s,r,5),this.setIndex(l),this.setAttribute("position",new $t(c,3)),this.setAttribute("normal",new $t(u,3)),this.setAttribute("uv",new $t(h,2));function g(v,_,m,y,M,b,E,A,x,T,D){let R=b/x,P=E/T,F=b/2,B=E/2,I=A/2,W=x+1,X=T+1,k=0,Q=0,G=new N;for(let tt=0;tt<X;tt++){let et=tt*P-B;for(let bt=0;bt<W;bt++){let Lt=bt*R-F;G[v]=Lt*y,G[_]=et*M,G[m]=I,c.push(G.x,G.y,G.z),G[v]=0,G[_]=0,G[m]=A>0?1:-1,u.push(G.x,G.y,G.z),h.push(bt/x),h.push(1-tt/T),k+=1}}for(let tt=0;tt<T;tt++)for(let et=0;et<x;et++){let bt=d+et+W*tt,Lt=d+et+W*(tt+1),Z=d+(et+1)+W*(tt+1),dt=d+(et+1)+W*tt;l.push(bt,Lt,dt),l.push(Lt,Z,dt),Q+=6}a.addGroup(f,Q,D),f+=Q,d+=k}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.depth,t.widthSegments,t.heightSegments,t.depthSegments)}};var Ls=class n extends he{constructor(t=1,e=32,i=0,s=Math.PI*2){super(),this.type="CircleGeometry",this.parameters={radius:t,segments:e,thetaStart:i,thetaLength:s},e=Math.max(3,e);let r=[],o=[],a=[],l=[],c=new N,u=new rt;o.push(0,0,0),a.push(0,0,1),l.push(.5,.5);for(let h=0,d=3;h<=e;h++,d+=3){let f=i+h/e*s;c.x=t*Math.cos(f),c.y=t*Math.sin(f),o.push(c.x,c.y,c.z),a.push(0,0,1),u.x=(o[d]/t+1)/2,u.y=(o[d+1]/t+1)/2,l.push(u.x,u.y)}for(let h=1;h<=e;h++)r.push(h,h+1,0);this.setIndex(r),this.setAttribute("position",new $t(o,3)),this.setAttribute("normal",new $t(a,3)),this.setAttribute("uv",new $t(l,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.segments,t.thetaStart,t.thetaLength)}},Fi=class n extends he{constructor(t=1,e=1,i=1,s=32,r=1,o=!1,a=0,l=Math.PI*2){super(),this.type="CylinderGeometry",this.parameters={radiusTop:t,radiusBottom:e,height:i,radialSegments:s,heightSegments:r,openEnded:o,thetaStart:a,thetaLength:l};let c=this;s=Math.floor(s),r=Math.floor(r);let u=[],h=[],d=[],f=[],g=0,v=[],_=i/2,m=0;y(),o===!1&&(t>0&&M(!0),e>0&&M(!1)),this.setIndex(u),this.setAttribute("position",new $t(h,3)),this.setAttribute("normal",new $t(d,3)),this.setAttribute("uv",new $t(f,2));function y(){let b=new N,E=new N,A=0,x=(e-t)/i;for(let T=0;T<=r;T++){let D=[],R=T/r,P=R*(e-t)+t;for(let F=0;F<=s;F++){let B=F/s,I=B*l+a,W=Math.sin(I),X=Math.cos(I);E.x=P*W,E.y=-R*i+_,E.z=P*X,h.push(E.x,E.y,E.z),b.set(W,x,X).normalize(),d.push(b.x,b.y,b.z),f.push(B,1-R),D.push(g++)}v.push(D)}for(let T=0;T<s;T++)for(let D=0;D<r;D++){let R=v[D][T],P=v[D+1][T],F=v[D+1][T+1],B=v[D][T+1];(t>0||D!==0)&&(u.push(R,P,B),A+=3),(e>0||D!==r-1)&&(u.push(P,F,B),A+=3)}c.addGroup(m,A,0),m+=A}function M(b){let E=g,A=new rt,x=new N,T=0,D=b===!0?t:e,R=b===!0?1:-1;for(let F=1;F<=s;F++)h.push(0,_*R,0),d.push(0,R,0),f.push(.5,.5),g++;let P=g;for(let F=0;F<=s;F++){let I=F/s*l+a,W=Math.cos(I),X=Math.sin(I);x.x=D*X,x.y=_*R,x.z=D*W,h.push(x.x,x.y,x.z),d.push(0,R,0),A.x=W*.5+.5,A.y=X*.5*R+.5,f.push(A.x,A.y),g++}for(let F=0;F<s;F++){let B=E+F,I=P+F;b===!0?u.push(I,I+1,B):u.push(I+1,I,B),T+=3}c.addGroup(m,T,b===!0?1:2),m+=T}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radiusTop,t.radiusBottom,t.height,t.radialSegments,t.heightSegments,t.openEnded,t.thetaStart,t.thetaLength)}};var Dn=class{constructor(){this.type="Curve",this.arcLengthDivisions=200,this.needsUpdate=!1,this.cacheArcLengths=null}getPoint(){It("Curve: .getPoint() not implemented.")}getPointAt(t,e){let i=this.getUtoTmapping(t);return this.getPoint(i,e)}getPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return e}getSpacedPoints(t=5){let e=[];for(let i=0;i<=t;i++)e.push(this.getPointAt(i/t));return e}getLength(){let t=this.getLengths();return t[t.length-1]}getLengths(t=this.arcLengthDivisions){if(this.cacheArcLengths&&this.cacheArcLengths.length===t+1&&!this.needsUpdate)return this.cacheArcLengths;this.needsUpdate=!1;let e=[],i,s=this.getPoint(0),r=0;e.push(0);for(let o=1;o<=t;o++)i=this.getPoint(o/t),r+=i.distanceTo(s),e.push(r),s=i;return this.cacheArcLengths=e,e}updateArcLengths(){this.needsUpdate=!0,this.getLengths()}getUtoTmapping(t,e=null){let i=this.getLengths(),s=0,r=i.length,o;e?o=e:o=t*i[r-1];let a=0,l=r-1,c;for(;a<=l;)if(s=Math.floor(a+(l-a)/2),c=i[s]-o,c<0)a=s+1;else if(c>0)l=s-1;else{l=s;break}if(s=l,i[s]===o)return s/(r-1);let u=i[s],d=i[s+1]-u,f=(o-u)/d;return(s+f)/(r-1)}getTangent(t,e){let s=t-1e-4,r=t+1e-4;s<0&&(s=0),r>1&&(r=1);let o=this.getPoint(s),a=this.getPoint(r),l=e||(o.isVector2?new rt:new N);return l.copy(a).sub(o).normalize(),l}getTangentAt(t,e){let i=this.getUtoTmapping(t);return this.getTangent(i,e)}computeFrenetFrames(t,e=!1){let i=new N,s=[],r=[],o=[],a=new N,l=new ee;for(let f=0;f<=t;f++){let g=f/t;s[f]=this.getTangentAt(g,new N)}r[0]=new N,o[0]=new N;let c=Number.MAX_VALUE,u=Math.abs(s[0].x),h=Math.abs(s[0].y),d=Math.abs(s[0].z);u<=c&&(c=u,i.set(1,0,0)),h<=c&&(c=h,i.set(0,1,0)),d<=c&&i.set(0,0,1),a.crossVectors(s[0],i).normalize(),r[0].crossVectors(s[0],a),o[0].crossVectors(s[0],r[0]);for(let f=1;f<=t;f++){if(r[f]=r[f-1].clone(),o[f]=o[f-1].clone(),a.crossVectors(s[f-1],s[f]),a.length()>Number.EPSILON){a.normalize();let g=Math.acos(Ht(s[f-1].dot(s[f]),-1,1));r[f].applyMatrix4(l.makeRotationAxis(a,g))}o[f].crossVectors(s[f],r[f])}if(e===!0){let f=Math.acos(Ht(r[0].dot(r[t]),-1,1));f/=t,s[0].dot(a.crossVectors(r[0],r[t]))>0&&(f=-f);for(let g=1;g<=t;g++)r[g].applyMatrix4(l.makeRotationAxis(s[g],f*g)),o[g].crossVectors(s[g],r[g])}return{tangents:s,normals:r,binormals:o}}clone(){return new this.constructor().copy(this)}copy(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}toJSON(){let t={metadata:{version:4.7,type:"Curve",generator:"Curve.toJSON"}};return t.arcLengthDivisions=this.arcLengthDivisions,t.type=this.type,t}fromJSON(t){return this.arcLengthDivisions=t.arcLengthDivisions,this.cacheArcLengths=null,this}},Fr=class extends Dn{constructor(t=0,e=0,i=1,s=1,r=0,o=Math.PI*2,a=!1,l=0){super(),this.isEllipseCurve=!0,this.type="EllipseCurve",this.aX=t,this.aY=e,this.xRadius=i,this.yRadius=s,this.aStartAngle=r,this.aEndAngle=o,this.aClockwise=a,this.aRotation=l}getPoint(t,e=new rt){let i=e,s=Math.PI*2,r=this.aEndAngle-this.aStartAngle,o=Math.abs(r)<Number.EPSILON;for(;r<0;)r+=s;for(;r>s;)r-=s;r<Number.EPSILON&&(o?r=0:r=s),this.aClockwise===!0&&!o&&(r===s?r=-s:r=r-s);let a=this.aStartAngle+t*r,l=this.aX+this.xRadius*Math.cos(a),c=this.aY+this.yRadius*Math.sin(a);if(this.aRotation!==0){let u=Math.cos(this.aRotation),h=Math.sin(this.aRotation),d=l-this.aX,f=c-this.aY;l=d*u-f*h+this.aX,c=d*h+f*u+this.aY}return i.set(l,c)}copy(t){return super.copy(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}toJSON(){let t=super.toJSON();return t.aX=this.aX,t.aY=this.aY,t.xRadius=this.xRadius,t.yRadius=this.yRadius,t.aStartAngle=this.aStartAngle,t.aEndAngle=this.aEndAngle,t.aClockwise=this.aClockwise,t.aRotation=this.aRotation,t}fromJSON(t){return super.fromJSON(t),this.aX=t.aX,this.aY=t.aY,this.xRadius=t.xRadius,this.yRadius=t.yRadius,this.aStartAngle=t.aStartAngle,this.aEndAngle=t.aEndAngle,this.aClockwise=t.aClockwise,this.aRotation=t.aRotation,this}},fc=class extends Fr{constructor(t,e,i,s,r,o){super(t,e,i,i,s,r,o),this.isArcCurve=!0,this.type="ArcCurve"}};function qf(){let n=0,t=0,e=0,i=0;function s(r,o,a,l){n=r,t=a,e=-3*r+3*o-2*a-l,i=2*r-2*o+a+l}return{initCatmullRom:function(r,o,a,l,c){s(o,a,c*(a-r),c*(l-o))},initNonuniformCatmullRom:function(r,o,a,l,c,u,h){let d=(o-r)/c-(a-r)/(c+u)+(a-o)/u,f=(a-o)/u-(l-o)/(u+h)+(l-a)/h;d*=u,f*=u,s(o,a,d,f)},calc:function(r){let o=r*r,a=o*r;return n+t*r+e*o+i*a}}}var Vm=new N,Gm=new N,sf=new qf,rf=new qf,of=new qf,dc=class extends Dn{constructor(t=[],e=!1,i="centripetal",s=.5){super(),this.isCatmullRomCurve3=!0,this.type="CatmullRomCurve3",this.points=t,this.closed=e,this.curveType=i,this.tension=s}getPoint(t,e=new N){let i=e,s=this.points,r=s.length,o=(r-(this.closed?0:1))*t,a=Math.floor(o),l=o-a;this.closed?a+=a>0?0:(Math.floor(Math.abs(a)/r)+1)*r:l===0&&a===r-1&&(a=r-2,l=1);let c,u;this.closed||a>0?c=s[(a-1)%r]:(Gm.subVectors(s[0],s[1]).add(s[0]),c=Gm);let h=s[a%r],d=s[(a+1)%r];if(this.closed||a+2<r?u=s[(a+2)%r]:(Vm.subVectors(s[r-1],s[r-2]).add(s[r-1]),u=Vm),this.curveType==="centripetal"||this.curveType==="chordal"){let f=this.curveType==="chordal"?.5:.25,g=Math.pow(c.distanceToSquared(h),f),v=Math.pow(h.distanceToSquared(d),f),_=Math.pow(d.distanceToSquared(u),f);v<1e-4&&(v=1),g<1e-4&&(g=v),_<1e-4&&(_=v),sf.initNonuniformCatmullRom(c.x,h.x,d.x,u.x,g,v,_),rf.initNonuniformCatmullRom(c.y,h.y,d.y,u.y,g,v,_),of.initNonuniformCatmullRom(c.z,h.z,d.z,u.z,g,v,_)}else this.curveType==="catmullrom"&&(sf.initCatmullRom(c.x,h.x,d.x,u.x,this.tension),rf.initCatmullRom(c.y,h.y,d.y,u.y,this.tension),of.initCatmullRom(c.z,h.z,d.z,u.z,this.tension));return i.set(sf.calc(l),rf.calc(l),of.calc(l)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t.closed=this.closed,t.curveType=this.curveType,t.tension=this.tension,t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new N().fromArray(s))}return this.closed=t.closed,this.curveType=t.curveType,this.tension=t.tension,this}};function Hm(n,t,e,i,s){let r=(i-t)*.5,o=(s-e)*.5,a=n*n,l=n*a;return(2*e-2*i+r+o)*l+(-3*e+3*i-2*r-o)*a+r*n+e}function Hy(n,t){let e=1-n;return e*e*t}function Wy(n,t){return 2*(1-n)*n*t}function Xy(n,t){return n*n*t}function Uo(n,t,e,i){return Hy(n,t)+Wy(n,e)+Xy(n,i)}function qy(n,t){let e=1-n;return e*e*e*t}function $y(n,t){let e=1-n;return 3*e*e*n*t}function Yy(n,t){return 3*(1-n)*n*n*t}function Zy(n,t){return n*n*n*t}function Fo(n,t,e,i,s){return qy(n,t)+$y(n,e)+Yy(n,i)+Zy(n,s)}var jo=class extends Dn{constructor(t=new rt,e=new rt,i=new rt,s=new rt){super(),this.isCubicBezierCurve=!0,this.type="CubicBezierCurve",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new rt){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(Fo(t,s.x,r.x,o.x,a.x),Fo(t,s.y,r.y,o.y,a.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},pc=class extends Dn{constructor(t=new N,e=new N,i=new N,s=new N){super(),this.isCubicBezierCurve3=!0,this.type="CubicBezierCurve3",this.v0=t,this.v1=e,this.v2=i,this.v3=s}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2,a=this.v3;return i.set(Fo(t,s.x,r.x,o.x,a.x),Fo(t,s.y,r.y,o.y,a.y),Fo(t,s.z,r.z,o.z,a.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this.v3.copy(t.v3),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t.v3=this.v3.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this.v3.fromArray(t.v3),this}},Qo=class extends Dn{constructor(t=new rt,e=new rt){super(),this.isLineCurve=!0,this.type="LineCurve",this.v1=t,this.v2=e}getPoint(t,e=new rt){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new rt){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},mc=class extends Dn{constructor(t=new N,e=new N){super(),this.isLineCurve3=!0,this.type="LineCurve3",this.v1=t,this.v2=e}getPoint(t,e=new N){let i=e;return t===1?i.copy(this.v2):(i.copy(this.v2).sub(this.v1),i.multiplyScalar(t).add(this.v1)),i}getPointAt(t,e){return this.getPoint(t,e)}getTangent(t,e=new N){return e.subVectors(this.v2,this.v1).normalize()}getTangentAt(t,e){return this.getTangent(t,e)}copy(t){return super.copy(t),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},ta=class extends Dn{constructor(t=new rt,e=new rt,i=new rt){super(),this.isQuadraticBezierCurve=!0,this.type="QuadraticBezierCurve",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new rt){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(Uo(t,s.x,r.x,o.x),Uo(t,s.y,r.y,o.y)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},gc=class extends Dn{constructor(t=new N,e=new N,i=new N){super(),this.isQuadraticBezierCurve3=!0,this.type="QuadraticBezierCurve3",this.v0=t,this.v1=e,this.v2=i}getPoint(t,e=new N){let i=e,s=this.v0,r=this.v1,o=this.v2;return i.set(Uo(t,s.x,r.x,o.x),Uo(t,s.y,r.y,o.y),Uo(t,s.z,r.z,o.z)),i}copy(t){return super.copy(t),this.v0.copy(t.v0),this.v1.copy(t.v1),this.v2.copy(t.v2),this}toJSON(){let t=super.toJSON();return t.v0=this.v0.toArray(),t.v1=this.v1.toArray(),t.v2=this.v2.toArray(),t}fromJSON(t){return super.fromJSON(t),this.v0.fromArray(t.v0),this.v1.fromArray(t.v1),this.v2.fromArray(t.v2),this}},ea=class extends Dn{constructor(t=[]){super(),this.isSplineCurve=!0,this.type="SplineCurve",this.points=t}getPoint(t,e=new rt){let i=e,s=this.points,r=(s.length-1)*t,o=Math.floor(r),a=r-o,l=s[o===0?o:o-1],c=s[o],u=s[o>s.length-2?s.length-1:o+1],h=s[o>s.length-3?s.length-1:o+2];return i.set(Hm(a,l.x,c.x,u.x,h.x),Hm(a,l.y,c.y,u.y,h.y)),i}copy(t){super.copy(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.points=[];for(let e=0,i=this.points.length;e<i;e++){let s=this.points[e];t.points.push(s.toArray())}return t}fromJSON(t){super.fromJSON(t),this.points=[];for(let e=0,i=t.points.length;e<i;e++){let s=t.points[e];this.points.push(new rt().fromArray(s))}return this}},Wm=Object.freeze({__proto__:null,ArcCurve:fc,CatmullRomCurve3:dc,CubicBezierCurve:jo,CubicBezierCurve3:pc,EllipseCurve:Fr,LineCurve:Qo,LineCurve3:mc,QuadraticBezierCurve:ta,QuadraticBezierCurve3:gc,SplineCurve:ea}),_c=class extends Dn{constructor(){super(),this.type="CurvePath",this.curves=[],this.autoClose=!1,this.cacheLengths=null}add(t){this.curves.push(t)}closePath(){let t=this.curves[0].getPoint(0),e=this.curves[this.curves.length-1].getPoint(1);if(!t.equals(e)){let i=t.isVector2===!0?"LineCurve":"LineCurve3";this.curves.push(new Wm[i](e,t))}return this}getPoint(t,e){let i=t*this.getLength(),s=this.getCurveLengths(),r=0;for(;r<s.length;){if(s[r]>=i){let o=s[r]-i,a=this.curves[r],l=a.getLength(),c=l===0?0:1-o/l;return a.getPointAt(c,e)}r++}return null}getLength(){let t=this.getCurveLengths();return t[t.length-1]}updateArcLengths(){this.needsUpdate=!0,this.cacheLengths=null,this.getCurveLengths()}getCurveLengths(){if(this.cacheLengths&&this.cacheLengths.length===this.curves.length)return this.cacheLengths;let t=[],e=0;for(let i=0,s=this.curves.length;i<s;i++)e+=this.curves[i].getLength(),t.push(e);return this.cacheLengths=t,t}getSpacedPoints(t=40){let e=[];for(let i=0;i<=t;i++)e.push(this.getPoint(i/t));return this.autoClose&&e.push(e[0]),e}getPoints(t=12){let e=[],i;for(let s=0,r=this.curves;s<r.length;s++){let o=r[s],a=o.isEllipseCurve?t*2:o.isLineCurve||o.isLineCurve3?1:o.isSplineCurve?t*o.points.length:t,l=o.getPoints(a);for(let c=0;c<l.length;c++){let u=l[c];i&&i.equals(u)||(e.push(u),i=u)}}return this.autoClose&&e.length>1&&!e[e.length-1].equals(e[0])&&e.push(e[0]),e}copy(t){super.copy(t),this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(s.clone())}return this.autoClose=t.autoClose,this.cacheLengths=null,this}toJSON(){let t=super.toJSON();t.autoClose=this.autoClose,t.curves=[];for(let e=0,i=this.curves.length;e<i;e++){let s=this.curves[e];t.curves.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.autoClose=t.autoClose,this.curves=[];for(let e=0,i=t.curves.length;e<i;e++){let s=t.curves[e];this.curves.push(new Wm[s.type]().fromJSON(s))}return this.cacheLengths=null,this}},na=class extends _c{constructor(t){super(),this.type="Path",this.currentPoint=new rt,t&&this.setFromPoints(t)}setFromPoints(t){this.moveTo(t[0].x,t[0].y);for(let e=1,i=t.length;e<i;e++)this.lineTo(t[e].x,t[e].y);return this}moveTo(t,e){return this.currentPoint.set(t,e),this}lineTo(t,e){let i=new Qo(this.currentPoint.clone(),new rt(t,e));return this.curves.push(i),this.currentPoint.set(t,e),this}quadraticCurveTo(t,e,i,s){let r=new ta(this.currentPoint.clone(),new rt(t,e),new rt(i,s));return this.curves.push(r),this.currentPoint.set(i,s),this}bezierCurveTo(t,e,i,s,r,o){let a=new jo(this.currentPoint.clone(),new rt(t,e),new rt(i,s),new rt(r,o));return this.curves.push(a),this.currentPoint.set(r,o),this}splineThru(t){let e=[this.currentPoint.clone()].concat(t),i=new ea(e);return this.curves.push(i),this.currentPoint.copy(t[t.length-1]),this}arc(t,e,i,s,r,o){let a=this.currentPoint.x,l=this.currentPoint.y;return this.absarc(t+a,e+l,i,s,r,o),this}absarc(t,e,i,s,r,o){return this.absellipse(t,e,i,i,s,r,o),this}ellipse(t,e,i,s,r,o,a,l){let c=this.currentPoint.x,u=this.currentPoint.y;return this.absellipse(t+c,e+u,i,s,r,o,a,l),this}absellipse(t,e,i,s,r,o,a,l){let c=new Fr(t,e,i,s,r,o,a,l);if(this.curves.length>0){let h=c.getPoint(0);h.equals(this.currentPoint)||this.lineTo(h.x,h.y)}this.curves.push(c);let u=c.getPoint(1);return this.currentPoint.copy(u),this}copy(t){return super.copy(t),this.currentPoint.copy(t.currentPoint),this}toJSON(){let t=super.toJSON();return t.currentPoint=this.currentPoint.toArray(),t}fromJSON(t){return super.fromJSON(t),this.currentPoint.fromArray(t.currentPoint),this}},is=class extends na{constructor(t){super(t),this.uuid=zs(),this.type="Shape",this.holes=[]}getPointsHoles(t){let e=[];for(let i=0,s=this.holes.length;i<s;i++)e[i]=this.holes[i].getPoints(t);return e}extractPoints(t){return{shape:this.getPoints(t),holes:this.getPointsHoles(t)}}copy(t){super.copy(t),this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(s.clone())}return this}toJSON(){let t=super.toJSON();t.uuid=this.uuid,t.holes=[];for(let e=0,i=this.holes.length;e<i;e++){let s=this.holes[e];t.holes.push(s.toJSON())}return t}fromJSON(t){super.fromJSON(t),this.uuid=t.uuid,this.holes=[];for(let e=0,i=t.holes.length;e<i;e++){let s=t.holes[e];this.holes.push(new na().fromJSON(s))}return this}};function Jy(n,t,e=2){let i=t&&t.length,s=i?t[0]*e:n.length,r=Vg(n,0,s,e,!0),o=[];if(!r||r.next===r.prev)return o;let a,l,c;if(i&&(r=ex(n,t,r,e)),n.length>80*e){a=n[0],l=n[1];let u=a,h=l;for(let d=e;d<s;d+=e){let f=n[d],g=n[d+1];f<a&&(a=f),g<l&&(l=g),f>u&&(u=f),g>h&&(h=g)}c=Math.max(u-a,h-l),c=c!==0?32767/c:0}return ia(r,o,e,a,l,c,0),o}function Vg(n,t,e,i,s){let r;if(s===fx(n,t,e,i)>0)for(let o=t;o<e;o+=i)r=Xm(o/i|0,n[o],n[o+1],r);else for(let o=e-i;o>=t;o-=i)r=Xm(o/i|0,n[o],n[o+1],r);return r&&Or(r,r.next)&&(ra(r),r=r.next),r}function Ns(n,t){if(!n)return n;t||(t=n);let e=n,i;do if(i=!1,!e.steiner&&(Or(e,e.next)||Re(e.prev,e,e.next)===0)){if(ra(e),e=t=e.prev,e===e.next)break;i=!0}else e=e.next;while(i||e!==t);return t}function ia(n,t,e,i,s,r,o){if(!n)return;!o&&r&&ox(n,i,s,r);let a=n;for(;n.prev!==n.next;){let l=n.prev,c=n.next;if(r?jy(n,i,s,r):Ky(n)){t.push(l.i,n.i,c.i),ra(n),n=c.next,a=c.next;continue}if(n=c,n===a){o?o===1?(n=Qy(Ns(n),t),ia(n,t,e,i,s,r,2)):o===2&&tx(n,t,e,i,s,r):ia(Ns(n),t,e,i,s,r,1);break}}}function Ky(n){let t=n.prev,e=n,i=n.next;if(Re(t,e,i)>=0)return!1;let s=t.x,r=e.x,o=i.x,a=t.y,l=e.y,c=i.y,u=Math.min(s,r,o),h=Math.min(a,l,c),d=Math.max(s,r,o),f=Math.max(a,l,c),g=i.next;for(;g!==t;){if(g.x>=u&&g.x<=d&&g.y>=h&&g.y<=f&&Io(s,a,r,l,o,c,g.x,g.y)&&Re(g.prev,g,g.next)>=0)return!1;g=g.next}return!0}function jy(n,t,e,i){let s=n.prev,r=n,o=n.next;if(Re(s,r,o)>=0)return!1;let a=s.x,l=r.x,c=o.x,u=s.y,h=r.y,d=o.y,f=Math.min(a,l,c),g=Math.min(u,h,d),v=Math.max(a,l,c),_=Math.max(u,h,d),m=df(f,g,t,e,i),y=df(v,_,t,e,i),M=n.prevZ,b=n.nextZ;for(;M&&M.z>=m&&b&&b.z<=y;){if(M.x>=f&&M.x<=v&&M.y>=g&&M.y<=_&&M!==s&&M!==o&&Io(a,u,l,h,c,d,M.x,M.y)&&Re(M.prev,M,M.next)>=0||(M=M.prevZ,b.x>=f&&b.x<=v&&b.y>=g&&b.y<=_&&b!==s&&b!==o&&Io(a,u,l,h,c,d,b.x,b.y)&&Re(b.prev,b,b.next)>=0))return!1;b=b.nextZ}for(;M&&M.z>=m;){if(M.x>=f&&M.x<=v&&M.y>=g&&M.y<=_&&M!==s&&M!==o&&Io(a,u,l,h,c,d,M.x,M.y)&&Re(M.prev,M,M.next)>=0)return!1;M=M.prevZ}for(;b&&b.z<=y;){if(b.x>=f&&b.x<=v&&b.y>=g&&b.y<=_&&b!==s&&b!==o&&Io(a,u,l,h,c,d,b.x,b.y)&&Re(b.prev,b,b.next)>=0)return!1;b=b.nextZ}return!0}function Qy(n,t){let e=n;do{let i=e.prev,s=e.next.next;!Or(i,s)&&Hg(i,e,e.next,s)&&sa(i,s)&&sa(s,i)&&(t.push(i.i,e.i,s.i),ra(e),ra(e.next),e=n=s),e=e.next}while(e!==n);return Ns(e)}function tx(n,t,e,i,s,r){let o=n;do{let a=o.next.next;for(;a!==o.prev;){if(o.i!==a.i&&cx(o,a)){let l=Wg(o,a);o=Ns(o,o.next),l=Ns(l,l.next),ia(o,t,e,i,s,r,0),ia(l,t,e,i,s,r,0);return}a=a.next}o=o.next}while(o!==n)}function ex(n,t,e,i){let s=[];for(let r=0,o=t.length;r<o;r++){let a=t[r]*i,l=r<o-1?t[r+1]*i:n.length,c=Vg(n,a,l,i,!1);c===c.next&&(c.steiner=!0),s.push(lx(c))}s.sort(nx);for(let r=0;r<s.length;r++)e=ix(s[r],e);return e}function nx(n,t){let e=n.x-t.x;if(e===0&&(e=n.y-t.y,e===0)){let i=(n.next.y-n.y)/(n.next.x-n.x),s=(t.next.y-t.y)/(t.next.x-t.x);e=i-s}return e}function ix(n,t){let e=sx(n,t);if(!e)return t;let i=Wg(e,n);return Ns(i,i.next),Ns(e,e.next)}function sx(n,t){let e=t,i=n.x,s=n.y,r=-1/0,o;if(Or(n,e))return e;do{if(Or(n,e.next))return e.next;if(s<=e.y&&s>=e.next.y&&e.next.y!==e.y){let h=e.x+(s-e.y)*(e.next.x-e.x)/(e.next.y-e.y);if(h<=i&&h>r&&(r=h,o=e.x<e.next.x?e:e.next,h===i))return o}e=e.next}while(e!==t);if(!o)return null;let a=o,l=o.x,c=o.y,u=1/0;e=o;do{if(i>=e.x&&e.x>=l&&i!==e.x&&Gg(s<c?i:r,s,l,c,s<c?r:i,s,e.x,e.y)){let h=Math.abs(s-e.y)/(i-e.x);sa(e,n)&&(h<u||h===u&&(e.x>o.x||e.x===o.x&&rx(o,e)))&&(o=e,u=h)}e=e.next}while(e!==a);return o}function rx(n,t){return Re(n.prev,n,t.prev)<0&&Re(t.next,n,n.next)<0}function ox(n,t,e,i){let s=n;do s.z===0&&(s.z=df(s.x,s.y,t,e,i)),s.prevZ=s.prev,s.nextZ=s.next,s=s.next;while(s!==n);s.prevZ.nextZ=null,s.prevZ=null,ax(s)}function ax(n){let t,e=1;do{let i=n,s;n=null;let r=null;for(t=0;i;){t++;let o=i,a=0;for(let c=0;c<e&&(a++,o=o.nextZ,!!o);c++);let l=e;for(;a>0||l>0&&o;)a!==0&&(l===0||!o||i.z<=o.z)?(s=i,i=i.nextZ,a--):(s=o,o=o.nextZ,l--),r?r.nextZ=s:n=s,s.prevZ=r,r=s;i=o}r.nextZ=null,e*=2}while(t>1);return n}function df(n,t,e,i,s){return n=(n-e)*s|0,t=(t-i)*s|0,n=(n|n<<8)&16711935,n=(n|n<<4)&252645135,n=(n|n<<2)&858993459,n=(n|n<<1)&1431655765,t=(t|t<<8)&16711935,t=(t|t<<4)&252645135,t=(t|t<<2)&858993459,t=(t|t<<1)&1431655765,n|t<<1}function lx(n){let t=n,e=n;do(t.x<e.x||t.x===e.x&&t.y<e.y)&&(e=t),t=t.next;while(t!==n);return e}function Gg(n,t,e,i,s,r,o,a){return(s-o)*(t-a)>=(n-o)*(r-a)&&(n-o)*(i-a)>=(e-o)*(t-a)&&(e-o)*(r-a)>=(s-o)*(i-a)}function Io(n,t,e,i,s,r,o,a){return!(n===o&&t===a)&&Gg(n,t,e,i,s,r,o,a)}function cx(n,t){return n.next.i!==t.i&&n.prev.i!==t.i&&!ux(n,t)&&(sa(n,t)&&sa(t,n)&&hx(n,t)&&(Re(n.prev,n,t.prev)||Re(n,t.prev,t))||Or(n,t)&&Re(n.prev,n,n.next)>0&&Re(t.prev,t,t.next)>0)}function Re(n,t,e){return(t.y-n.y)*(e.x-t.x)-(t.x-n.x)*(e.y-t.y)}function Or(n,t){return n.x===t.x&&n.y===t.y}function Hg(n,t,e,i){let s=Hl(Re(n,t,e)),r=Hl(Re(n,t,i)),o=Hl(Re(e,i,n)),a=Hl(Re(e,i,t));return!!(s!==r&&o!==a||s===0&&Gl(n,e,t)||r===0&&Gl(n,i,t)||o===0&&Gl(e,n,i)||a===0&&Gl(e,t,i))}function Gl(n,t,e){return t.x<=Math.max(n.x,e.x)&&t.x>=Math.min(n.x,e.x)&&t.y<=Math.max(n.y,e.y)&&t.y>=Math.min(n.y,e.y)}function Hl(n){return n>0?1:n<0?-1:0}function ux(n,t){let e=n;do{if(e.i!==n.i&&e.next.i!==n.i&&e.i!==t.i&&e.next.i!==t.i&&Hg(e,e.next,n,t))return!0;e=e.next}while(e!==n);return!1}function sa(n,t){return Re(n.prev,n,n.next)<0?Re(n,t,n.next)>=0&&Re(n,n.prev,t)>=0:Re(n,t,n.prev)<0||Re(n,n.next,t)<0}function hx(n,t){let e=n,i=!1,s=(n.x+t.x)/2,r=(n.y+t.y)/2;do e.y>r!=e.next.y>r&&e.next.y!==e.y&&s<(e.next.x-e.x)*(r-e.y)/(e.next.y-e.y)+e.x&&(i=!i),e=e.next;while(e!==n);return i}function Wg(n,t){let e=pf(n.i,n.x,n.y),i=pf(t.i,t.x,t.y),s=n.next,r=t.prev;return n.next=t,t.prev=n,e.next=s,s.prev=e,i.next=e,e.prev=i,r.next=i,i.prev=r,i}function Xm(n,t,e,i){let s=pf(n,t,e);return i?(s.next=i.next,s.prev=i,i.next.prev=s,i.next=s):(s.prev=s,s.next=s),s}function ra(n){n.next.prev=n.prev,n.prev.next=n.next,n.prevZ&&(n.prevZ.nextZ=n.nextZ),n.nextZ&&(n.nextZ.prevZ=n.prevZ)}function pf(n,t,e){return{i:n,x:t,y:e,prev:null,next:null,z:0,prevZ:null,nextZ:null,steiner:!1}}function fx(n,t,e,i){let s=0;for(let r=t,o=e-i;r<e;r+=i)s+=(n[o]-n[r])*(n[r+1]+n[o+1]),o=r;return s}var mf=class{static triangulate(t,e,i=2){return Jy(t,e,i)}},Er=class n{static area(t){let e=t.length,i=0;for(let s=e-1,r=0;r<e;s=r++)i+=t[s].x*t[r].y-t[r].x*t[s].y;return i*.5}static isClockWise(t){return n.area(t)<0}static triangulateShape(t,e){let i=[],s=[],r=[];qm(t),$m(i,t);let o=t.length;e.forEach(qm);for(let l=0;l<e.length;l++)s.push(o),o+=e[l].length,$m(i,e[l]);let a=mf.triangulate(i,s);for(let l=0;l<a.length;l+=3)r.push(a.slice(l,l+3));return r}};function qm(n){let t=n.length;t>2&&n[t-1].equals(n[0])&&n.pop()}function $m(n,t){for(let e=0;e<t.length;e++)n.push(t[e].x),n.push(t[e].y)}var oa=class n extends he{constructor(t=[new rt(0,-.5),new rt(.5,0),new rt(0,.5)],e=12,i=0,s=Math.PI*2){super(),this.type="LatheGeometry",this.parameters={points:t,segments:e,phiStart:i,phiLength:s},e=Math.floor(e),s=Ht(s,0,Math.PI*2);let r=[],o=[],a=[],l=[],c=[],u=1/e,h=new N,d=new rt,f=new N,g=new N,v=new N,_=0,m=0;for(let y=0;y<=t.length-1;y++)switch(y){case 0:_=t[y+1].x-t[y].x,m=t[y+1].y-t[y].y,f.x=m*1,f.y=-_,f.z=m*0,v.copy(f),f.normalize(),l.push(f.x,f.y,f.z);break;case t.length-1:v.normalize(),l.push(v.x,v.y,v.z);break;default:_=t[y+1].x-t[y].x,m=t[y+1].y-t[y].y,f.x=m*1,f.y=-_,f.z=m*0,g.copy(f),f.x+=v.x,f.y+=v.y,f.z+=v.z,f.normalize(),l.push(f.x,f.y,f.z),v.copy(g)}for(let y=0;y<=e;y++){let M=i+y*u*s,b=Math.sin(M),E=Math.cos(M);for(let A=0;A<=t.length-1;A++){h.x=t[A].x*b,h.y=t[A].y,h.z=t[A].x*E,o.push(h.x,h.y,h.z),d.x=y/e,d.y=A/(t.length-1),a.push(d.x,d.y);let x=l[3*A+0]*b,T=l[3*A+1],D=l[3*A+0]*E;c.push(x,T,D)}}for(let y=0;y<e;y++)for(let M=0;M<t.length-1;M++){let b=M+y*t.length,E=b,A=b+t.length,x=b+t.length+1,T=b+1;r.push(E,A,T),r.push(x,T,A)}this.setIndex(r),this.setAttribute("position",new $t(o,3)),this.setAttribute("uv",new $t(a,2)),this.setAttribute("normal",new $t(c,3))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.points,t.segments,t.phiStart,t.phiLength)}};var aa=class n extends he{constructor(t=1,e=1,i=1,s=1){super(),this.type="PlaneGeometry",this.parameters={width:t,height:e,widthSegments:i,heightSegments:s};let r=t/2,o=e/2,a=Math.floor(i),l=Math.floor(s),c=a+1,u=l+1,h=t/a,d=e/l,f=[],g=[],v=[],_=[];for(let m=0;m<u;m++){let y=m*d-o;for(let M=0;M<c;M++){let b=M*h-r;g.push(b,-y,0),v.push(0,0,1),_.push(M/a),_.push(1-m/l)}}for(let m=0;m<l;m++)for(let y=0;y<a;y++){let M=y+c*m,b=y+c*(m+1),E=y+1+c*(m+1),A=y+1+c*m;f.push(M,b,A),f.push(b,E,A)}this.setIndex(f),this.setAttribute("position",new $t(g,3)),this.setAttribute("normal",new $t(v,3)),this.setAttribute("uv",new $t(_,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.width,t.height,t.widthSegments,t.heightSegments)}};var kr=class n extends he{constructor(t=new is([new rt(0,.5),new rt(-.5,-.5),new rt(.5,-.5)]),e=12){super(),this.type="ShapeGeometry",this.parameters={shapes:t,curveSegments:e};let i=[],s=[],r=[],o=[],a=0,l=0;if(Array.isArray(t)===!1)c(t);else for(let u=0;u<t.length;u++)c(t[u]),this.addGroup(a,l,u),a+=l,l=0;this.setIndex(i),this.setAttribute("position",new $t(s,3)),this.setAttribute("normal",new $t(r,3)),this.setAttribute("uv",new $t(o,2));function c(u){let h=s.length/3,d=u.extractPoints(e),f=d.shape,g=d.holes;Er.isClockWise(f)===!1&&(f=f.reverse());for(let _=0,m=g.length;_<m;_++){let y=g[_];Er.isClockWise(y)===!0&&(g[_]=y.reverse())}let v=Er.triangulateShape(f,g);for(let _=0,m=g.length;_<m;_++){let y=g[_];f=f.concat(y)}for(let _=0,m=f.length;_<m;_++){let y=f[_];s.push(y.x,y.y,0),r.push(0,0,1),o.push(y.x,y.y)}for(let _=0,m=v.length;_<m;_++){let y=v[_],M=y[0]+h,b=y[1]+h,E=y[2]+h;i.push(M,b,E),l+=3}}}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}toJSON(){let t=super.toJSON(),e=this.parameters.shapes;return dx(e,t)}static fromJSON(t,e){let i=[];for(let s=0,r=t.shapes.length;s<r;s++){let o=e[t.shapes[s]];i.push(o)}return new n(i,t.curveSegments)}};function dx(n,t){if(t.shapes=[],Array.isArray(n))for(let e=0,i=n.length;e<i;e++){let s=n[e];t.shapes.push(s.uuid)}else t.shapes.push(n.uuid);return t}var ss=class n extends he{constructor(t=1,e=32,i=16,s=0,r=Math.PI*2,o=0,a=Math.PI){super(),this.type="SphereGeometry",this.parameters={radius:t,widthSegments:e,heightSegments:i,phiStart:s,phiLength:r,thetaStart:o,thetaLength:a},e=Math.max(3,Math.floor(e)),i=Math.max(2,Math.floor(i));let l=Math.min(o+a,Math.PI),c=0,u=[],h=new N,d=new N,f=[],g=[],v=[],_=[];for(let m=0;m<=i;m++){let y=[],M=m/i,b=o+M*a,E=t*Math.cos(b),A=Math.sqrt(t*t-E*E),x=0;m===0&&o===0?x=.5/e:m===i&&l===Math.PI&&(x=-.5/e);for(let T=0;T<=e;T++){let D=T/e,R=s+D*r;h.x=-A*Math.cos(R),h.y=E,h.z=A*Math.sin(R),g.push(h.x,h.y,h.z),d.copy(h).normalize(),v.push(d.x,d.y,d.z),_.push(D+x,1-M),y.push(c++)}u.push(y)}for(let m=0;m<i;m++)for(let y=0;y<e;y++){let M=u[m][y+1],b=u[m][y],E=u[m+1][y],A=u[m+1][y+1];(m!==0||o>0)&&f.push(M,b,A),(m!==i-1||l<Math.PI)&&f.push(b,E,A)}this.setIndex(f),this.setAttribute("position",new $t(g,3)),this.setAttribute("normal",new $t(v,3)),this.setAttribute("uv",new $t(_,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.widthSegments,t.heightSegments,t.phiStart,t.phiLength,t.thetaStart,t.thetaLength)}};var la=class n extends he{constructor(t=1,e=.4,i=12,s=48,r=Math.PI*2,o=0,a=Math.PI*2){super(),this.type="TorusGeometry",this.parameters={radius:t,tube:e,radialSegments:i,tubularSegments:s,arc:r,thetaStart:o,thetaLength:a},i=Math.floor(i),s=Math.floor(s);let l=[],c=[],u=[],h=[],d=new N,f=new N,g=new N;for(let v=0;v<=i;v++){let _=o+v/i*a;for(let m=0;m<=s;m++){let y=m/s*r;f.x=(t+e*Math.cos(_))*Math.cos(y),f.y=(t+e*Math.cos(_))*Math.sin(y),f.z=e*Math.sin(_),c.push(f.x,f.y,f.z),d.x=t*Math.cos(y),d.y=t*Math.sin(y),g.subVectors(f,d).normalize(),u.push(g.x,g.y,g.z),h.push(m/s),h.push(v/i)}}for(let v=1;v<=i;v++)for(let _=1;_<=s;_++){let m=(s+1)*v+_-1,y=(s+1)*(v-1)+_-1,M=(s+1)*(v-1)+_,b=(s+1)*v+_;l.push(m,y,b),l.push(y,M,b)}this.setIndex(l),this.setAttribute("position",new $t(c,3)),this.setAttribute("normal",new $t(u,3)),this.setAttribute("uv",new $t(h,2))}copy(t){return super.copy(t),this.parameters=Object.assign({},t.parameters),this}static fromJSON(t){return new n(t.radius,t.tube,t.radialSegments,t.tubularSegments,t.arc,t.thetaStart,t.thetaLength)}};function Vs(n){let t={};for(let e in n){t[e]={};for(let i in n[e]){let s=n[e][i];if(Ym(s))s.isRenderTargetTexture?(It("UniformsUtils: Textures of render targets cannot be cloned via cloneUniforms() or mergeUniforms()."),t[e][i]=null):t[e][i]=s.clone();else if(Array.isArray(s))if(Ym(s[0])){let r=[];for(let o=0,a=s.length;o<a;o++)r[o]=s[o].clone();t[e][i]=r}else t[e][i]=s.slice();else t[e][i]=s}}return t}function hn(n){let t={};for(let e=0;e<n.length;e++){let i=Vs(n[e]);for(let s in i)t[s]=i[s]}return t}function Ym(n){return n&&(n.isColor||n.isMatrix3||n.isMatrix4||n.isVector2||n.isVector3||n.isVector4||n.isTexture||n.isQuaternion)}function px(n){let t=[];for(let e=0;e<n.length;e++)t.push(n[e].clone());return t}function $f(n){let t=n.getRenderTarget();return t===null?n.outputColorSpace:t.isXRRenderTarget===!0?t.texture.colorSpace:Kt.workingColorSpace}var Xg={clone:Vs,merge:hn},mx=`void main() {
	gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
}`,gx=`void main() {
	gl_FragColor = vec4( 1.0, 0.0, 0.0, 1.0 );
}`,Ln=class extends fi{constructor(t){super(),this.isShaderMaterial=!0,this.type="ShaderMaterial",this.defines={},this.uniforms={},this.uniformsGroups=[],this.vertexShader=mx,this.fragmentShader=gx,this.linewidth=1,this.wireframe=!1,this.wireframeLinewidth=1,this.fog=!1,this.lights=!1,this.clipping=!1,this.forceSinglePass=!0,this.extensions={clipCullDistance:!1,multiDraw:!1},this.defaultAttributeValues={color:[1,1,1],uv:[0,0],uv1:[0,0]},this.index0AttributeName=void 0,this.uniformsNeedUpdate=!1,this.glslVersion=null,t!==void 0&&this.setValues(t)}copy(t){return super.copy(t),this.fragmentShader=t.fragmentShader,this.vertexShader=t.vertexShader,this.uniforms=Vs(t.uniforms),this.uniformsGroups=px(t.uniformsGroups),this.defines=Object.assign({},t.defines),this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.fog=t.fog,this.lights=t.lights,this.clipping=t.clipping,this.extensions=Object.assign({},t.extensions),this.glslVersion=t.glslVersion,this.defaultAttributeValues=Object.assign({},t.defaultAttributeValues),this.index0AttributeName=t.index0AttributeName,this.uniformsNeedUpdate=t.uniformsNeedUpdate,this}toJSON(t){let e=super.toJSON(t);e.glslVersion=this.glslVersion,e.uniforms={};for(let s in this.uniforms){let o=this.uniforms[s].value;o&&o.isTexture?e.uniforms[s]={type:"t",value:o.toJSON(t).uuid}:o&&o.isColor?e.uniforms[s]={type:"c",value:o.getHex()}:o&&o.isVector2?e.uniforms[s]={type:"v2",value:o.toArray()}:o&&o.isVector3?e.uniforms[s]={type:"v3",value:o.toArray()}:o&&o.isVector4?e.uniforms[s]={type:"v4",value:o.toArray()}:o&&o.isMatrix3?e.uniforms[s]={type:"m3",value:o.toArray()}:o&&o.isMatrix4?e.uniforms[s]={type:"m4",value:o.toArray()}:e.uniforms[s]={value:o}}Object.keys(this.defines).length>0&&(e.defines=this.defines),e.vertexShader=this.vertexShader,e.fragmentShader=this.fragmentShader,e.lights=this.lights,e.clipping=this.clipping;let i={};for(let s in this.extensions)this.extensions[s]===!0&&(i[s]=!0);return Object.keys(i).length>0&&(e.extensions=i),e}fromJSON(t,e){if(super.fromJSON(t,e),t.uniforms!==void 0)for(let i in t.uniforms){let s=t.uniforms[i];switch(this.uniforms[i]={},s.type){case"t":this.uniforms[i].value=e[s.value]||null;break;case"c":this.uniforms[i].value=new Vt().setHex(s.value);break;case"v2":this.uniforms[i].value=new rt().fromArray(s.value);break;case"v3":this.uniforms[i].value=new N().fromArray(s.value);break;case"v4":this.uniforms[i].value=new Te().fromArray(s.value);break;case"m3":this.uniforms[i].value=new kt().fromArray(s.value);break;case"m4":this.uniforms[i].value=new ee().fromArray(s.value);break;default:this.uniforms[i].value=s.value}}if(t.defines!==void 0&&(this.defines=t.defines),t.vertexShader!==void 0&&(this.vertexShader=t.vertexShader),t.fragmentShader!==void 0&&(this.fragmentShader=t.fragmentShader),t.glslVersion!==void 0&&(this.glslVersion=t.glslVersion),t.extensions!==void 0)for(let i in t.extensions)this.extensions[i]=t.extensions[i];return t.lights!==void 0&&(this.lights=t.lights),t.clipping!==void 0&&(this.clipping=t.clipping),this}},vc=class extends Ln{constructor(t){super(t),this.isRawShaderMaterial=!0,this.type="RawShaderMaterial"}};var Us=class extends fi{constructor(t){super(),this.isMeshLambertMaterial=!0,this.type="MeshLambertMaterial",this.color=new Vt(16777215),this.map=null,this.lightMap=null,this.lightMapIntensity=1,this.aoMap=null,this.aoMapIntensity=1,this.emissive=new Vt(0),this.emissiveIntensity=1,this.emissiveMap=null,this.bumpMap=null,this.bumpScale=1,this.normalMap=null,this.normalMapType=xu,this.normalScale=new rt(1,1),this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.specularMap=null,this.alphaMap=null,this.envMap=null,this.envMapRotation=new Ni,this.combine=Lc,this.reflectivity=1,this.envMapIntensity=1,this.refractionRatio=.98,this.wireframe=!1,this.wireframeLinewidth=1,this.wireframeLinecap="round",this.wireframeLinejoin="round",this.flatShading=!1,this.fog=!0,this.setValues(t)}copy(t){return super.copy(t),this.color.copy(t.color),this.map=t.map,this.lightMap=t.lightMap,this.lightMapIntensity=t.lightMapIntensity,this.aoMap=t.aoMap,this.aoMapIntensity=t.aoMapIntensity,this.emissive.copy(t.emissive),this.emissiveMap=t.emissiveMap,this.emissiveIntensity=t.emissiveIntensity,this.bumpMap=t.bumpMap,this.bumpScale=t.bumpScale,this.normalMap=t.normalMap,this.normalMapType=t.normalMapType,this.normalScale.copy(t.normalScale),this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.specularMap=t.specularMap,this.alphaMap=t.alphaMap,this.envMap=t.envMap,this.envMapRotation.copy(t.envMapRotation),this.combine=t.combine,this.reflectivity=t.reflectivity,this.envMapIntensity=t.envMapIntensity,this.refractionRatio=t.refractionRatio,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this.wireframeLinecap=t.wireframeLinecap,this.wireframeLinejoin=t.wireframeLinejoin,this.flatShading=t.flatShading,this.fog=t.fog,this}},yc=class extends fi{constructor(t){super(),this.isMeshDepthMaterial=!0,this.type="MeshDepthMaterial",this.depthPacking=Tg,this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.wireframe=!1,this.wireframeLinewidth=1,this.setValues(t)}copy(t){return super.copy(t),this.depthPacking=t.depthPacking,this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this.wireframe=t.wireframe,this.wireframeLinewidth=t.wireframeLinewidth,this}},xc=class extends fi{constructor(t){super(),this.isMeshDistanceMaterial=!0,this.type="MeshDistanceMaterial",this.map=null,this.alphaMap=null,this.displacementMap=null,this.displacementScale=1,this.displacementBias=0,this.setValues(t)}copy(t){return super.copy(t),this.map=t.map,this.alphaMap=t.alphaMap,this.displacementMap=t.displacementMap,this.displacementScale=t.displacementScale,this.displacementBias=t.displacementBias,this}};function Sr(n,t){return!n||n.constructor===t?n:typeof t.BYTES_PER_ELEMENT=="number"?new t(n):Array.prototype.slice.call(n)}function Wl(n){return n!==void 0&&n.inTangents!==void 0&&n.outTangents!==void 0}var rs=class{constructor(t,e,i,s){this.parameterPositions=t,this._cachedIndex=0,this.resultBuffer=s!==void 0?s:new e.constructor(i),this.sampleValues=e,this.valueSize=i,this.settings=null,this.DefaultSettings_={}}evaluate(t){let e=this.parameterPositions,i=this._cachedIndex,s=e[i],r=e[i-1];t:{e:{let o;n:{i:if(!(t<s)){for(let a=i+2;;){if(s===void 0){if(t<r)break i;return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}if(i===a)break;if(r=s,s=e[++i],t<s)break e}o=e.length;break n}if(!(t>=r)){let a=e[1];t<a&&(i=2,r=a);for(let l=i-2;;){if(r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(i===l)break;if(s=r,r=e[--i-1],t>=r)break e}o=i,i=0;break n}break t}for(;i<o;){let a=i+o>>>1;t<e[a]?o=a:i=a+1}if(s=e[i],r=e[i-1],r===void 0)return this._cachedIndex=0,this.copySampleValue_(0);if(s===void 0)return i=e.length,this._cachedIndex=i,this.copySampleValue_(i-1)}this._cachedIndex=i,this.intervalChanged_(i,r,s)}return this.interpolate_(i,r,t,s)}getSettings_(){return this.settings||this.DefaultSettings_}copySampleValue_(t){let e=this.resultBuffer,i=this.sampleValues,s=this.valueSize,r=t*s;for(let o=0;o!==s;++o)e[o]=i[r+o];return e}interpolate_(){throw new Error("THREE.Interpolant: Call to abstract method.")}intervalChanged_(){}},bc=class extends rs{constructor(t,e,i,s){super(t,e,i,s),this._weightPrev=-0,this._offsetPrev=-0,this._weightNext=-0,this._offsetNext=-0,this.DefaultSettings_={endingStart:cf,endingEnd:cf}}intervalChanged_(t,e,i){let s=this.parameterPositions,r=t-2,o=t+1,a=s[r],l=s[o];if(a===void 0)switch(this.getSettings_().endingStart){case uf:r=t,a=2*e-i;break;case hf:r=s.length-2,a=e+s[r]-s[r+1];break;default:r=t,a=i}if(l===void 0)switch(this.getSettings_().endingEnd){case uf:o=t,l=2*i-e;break;case hf:o=1,l=i+s[1]-s[0];break;default:o=t-1,l=e}let c=(i-e)*.5,u=this.valueSize;this._weightPrev=c/(e-a),this._weightNext=c/(l-i),this._offsetPrev=r*u,this._offsetNext=o*u}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=this._offsetPrev,h=this._offsetNext,d=this._weightPrev,f=this._weightNext,g=(i-e)/(s-e),v=g*g,_=v*g,m=-d*_+2*d*v-d*g,y=(1+d)*_+(-1.5-2*d)*v+(-.5+d)*g+1,M=(-1-f)*_+(1.5+f)*v+.5*g,b=f*_-f*v;for(let E=0;E!==a;++E)r[E]=m*o[u+E]+y*o[c+E]+M*o[l+E]+b*o[h+E];return r}},Mc=class extends rs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=(i-e)/(s-e),h=1-u;for(let d=0;d!==a;++d)r[d]=o[c+d]*h+o[l+d]*u;return r}},Sc=class extends rs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t){return this.copySampleValue_(t-1)}},wc=class extends rs{interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=t*a,c=l-a,u=this.inTangents,h=this.outTangents;if(!u||!h){let g=(i-e)/(s-e),v=1-g;for(let _=0;_!==a;++_)r[_]=o[c+_]*v+o[l+_]*g;return r}let d=a*2,f=t-1;for(let g=0;g!==a;++g){let v=o[c+g],_=o[l+g],m=f*d+g*2,y=h[m],M=h[m+1],b=t*d+g*2,E=u[b],A=u[b+1],x=vx(i,e,y,E,s);r[g]=qg(x,v,M,A,_)}return r}};function qg(n,t,e,i,s){let r=1-n;return r*r*r*t+3*r*r*n*e+3*r*n*n*i+n*n*n*s}function _x(n,t,e,i,s){let r=1-n;return 3*r*r*(e-t)+6*r*n*(i-e)+3*n*n*(s-i)}function vx(n,t,e,i,s){let r=(n-t)/(s-t);for(let o=0;o<8;o++){let a=qg(r,t,e,i,s)-n;if(Math.abs(a)<1e-10)break;let l=_x(r,t,e,i,s);if(Math.abs(l)<1e-10)break;r=Math.max(0,Math.min(1,r-a/l))}return r}var Nn=class{constructor(t,e,i,s){if(t===void 0)throw new Error("THREE.KeyframeTrack: track name is undefined");if(e===void 0||e.length===0)throw new Error("THREE.KeyframeTrack: no keyframes in track named "+t);this.name=t,this.times=Sr(e,this.TimeBufferType),this.values=Sr(i,this.ValueBufferType),this.setInterpolation(s||this.DefaultInterpolation)}static toJSON(t){let e=t.constructor,i;if(e.toJSON!==this.toJSON)i=e.toJSON(t);else{i={name:t.name,times:Sr(t.times,Array),values:Sr(t.values,Array)};let s=t.getInterpolation();s!==t.DefaultInterpolation&&(i.interpolation=s),Wl(t.settings)&&(i.settings={inTangents:Sr(t.settings.inTangents,Array),outTangents:Sr(t.settings.outTangents,Array)})}return i.type=t.ValueTypeName,i}InterpolantFactoryMethodDiscrete(t){return new Sc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodLinear(t){return new Mc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodSmooth(t){return new bc(this.times,this.values,this.getValueSize(),t)}InterpolantFactoryMethodBezier(t){let e=new wc(this.times,this.values,this.getValueSize(),t);return this.settings&&(e.inTangents=this.settings.inTangents,e.outTangents=this.settings.outTangents),e}setInterpolation(t){let e;switch(t){case Oo:e=this.InterpolantFactoryMethodDiscrete;break;case sc:e=this.InterpolantFactoryMethodLinear;break;case $l:e=this.InterpolantFactoryMethodSmooth;break;case lf:e=this.InterpolantFactoryMethodBezier;break}if(e===void 0){let i="unsupported interpolation for "+this.ValueTypeName+" keyframe track named "+this.name;if(this.createInterpolant===void 0)if(t!==this.DefaultInterpolation)this.setInterpolation(this.DefaultInterpolation);else throw new Error(i);return It("KeyframeTrack:",i),this}return this.createInterpolant=e,this}getInterpolation(){switch(this.createInterpolant){case this.InterpolantFactoryMethodDiscrete:return Oo;case this.InterpolantFactoryMethodLinear:return sc;case this.InterpolantFactoryMethodSmooth:return $l;case this.InterpolantFactoryMethodBezier:return lf}}getValueSize(){return this.values.length/this.times.length}shift(t){if(t!==0){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]+=t;Wl(this.settings)&&(Zm(this.settings.inTangents,t),Zm(this.settings.outTangents,t))}return this}scale(t){if(t!==1){let e=this.times;for(let i=0,s=e.length;i!==s;++i)e[i]*=t;Wl(this.settings)&&(Jm(this.settings.inTangents,t),Jm(this.settings.outTangents,t))}return this}trim(t,e){let i=this.times,s=i.length,r=0,o=s-1;for(;r!==s&&i[r]<t;)++r;for(;o!==-1&&i[o]>e;)--o;if(++o,r!==0||o!==s){r>=o&&(o=Math.max(o,1),r=o-1);let a=this.getValueSize();this.times=i.slice(r,o),this.values=this.values.slice(r*a,o*a)}return this}validate(){let t=!0,e=this.getValueSize();e-Math.floor(e)!==0&&(Ft("KeyframeTrack: Invalid value size in track.",this),t=!1);let i=this.times,s=this.values,r=i.length;r===0&&(Ft("KeyframeTrack: Track is empty.",this),t=!1);let o=null;for(let a=0;a!==r;a++){let l=i[a];if(typeof l=="number"&&isNaN(l)){Ft("KeyframeTrack: Time is not a valid number.",this,a,l),t=!1;break}if(o!==null&&o>l){Ft("KeyframeTrack: Out of order keys.",this,a,l,o),t=!1;break}o=l}if(s!==void 0&&ly(s))for(let a=0,l=s.length;a!==l;++a){let c=s[a];if(isNaN(c)){Ft("KeyframeTrack: Value is not a valid number.",this,a,c),t=!1;break}}return t}optimize(){let t=this.times.slice(),e=this.values.slice(),i=this.getValueSize(),s=this.getInterpolation()===$l,r=t.length-1,o=1;for(let a=1;a<r;++a){let l=!1,c=t[a],u=t[a+1];if(c!==u&&(a!==1||c!==t[0]))if(s)l=!0;else{let h=a*i,d=h-i,f=h+i;for(let g=0;g!==i;++g){let v=e[h+g];if(v!==e[d+g]||v!==e[f+g]){l=!0;break}}}if(l){if(a!==o){t[o]=t[a];let h=a*i,d=o*i;for(let f=0;f!==i;++f)e[d+f]=e[h+f]}++o}}if(r>0){t[o]=t[r];for(let a=r*i,l=o*i,c=0;c!==i;++c)e[l+c]=e[a+c];++o}return o!==t.length?(this.times=t.slice(0,o),this.values=e.slice(0,o*i)):(this.times=t,this.values=e),this}clone(){let t=this.times.slice(),e=this.values.slice(),i=this.constructor,s=new i(this.name,t,e);return s.createInterpolant=this.createInterpolant,Wl(this.settings)&&(s.settings={inTangents:this.settings.inTangents.slice(),outTangents:this.settings.outTangents.slice()}),s}};function Zm(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]+=t}function Jm(n,t){for(let e=0,i=n.length;e!==i;e+=2)n[e]*=t}Nn.prototype.ValueTypeName="";Nn.prototype.TimeBufferType=Float32Array;Nn.prototype.ValueBufferType=Float32Array;Nn.prototype.DefaultInterpolation=sc;var os=class extends Nn{constructor(t,e,i){super(t,e,i)}};os.prototype.ValueTypeName="bool";os.prototype.ValueBufferType=Array;os.prototype.DefaultInterpolation=Oo;os.prototype.InterpolantFactoryMethodLinear=void 0;os.prototype.InterpolantFactoryMethodSmooth=void 0;var Tc=class extends Nn{constructor(t,e,i,s){super(t,e,i,s)}};Tc.prototype.ValueTypeName="color";var Ac=class extends Nn{constructor(t,e,i,s){super(t,e,i,s)}};Ac.prototype.ValueTypeName="number";var Ec=class extends rs{constructor(t,e,i,s){super(t,e,i,s)}interpolate_(t,e,i,s){let r=this.resultBuffer,o=this.sampleValues,a=this.valueSize,l=(i-e)/(s-e),c=t*a;for(let u=c+a;c!==u;c+=4)We.slerpFlat(r,0,o,c-a,o,c,l);return r}},ca=class extends Nn{constructor(t,e,i,s){super(t,e,i,s)}InterpolantFactoryMethodLinear(t){return new Ec(this.times,this.values,this.getValueSize(),t)}};ca.prototype.ValueTypeName="quaternion";ca.prototype.InterpolantFactoryMethodSmooth=void 0;var as=class extends Nn{constructor(t,e,i){super(t,e,i)}};as.prototype.ValueTypeName="string";as.prototype.ValueBufferType=Array;as.prototype.DefaultInterpolation=Oo;as.prototype.InterpolantFactoryMethodLinear=void 0;as.prototype.InterpolantFactoryMethodSmooth=void 0;var Cc=class extends Nn{constructor(t,e,i,s){super(t,e,i,s)}};Cc.prototype.ValueTypeName="vector";var Rc=class{constructor(t,e,i){let s=this,r=!1,o=0,a=0,l,c=[];this.onStart=void 0,this.onLoad=t,this.onProgress=e,this.onError=i,this._abortController=null,this.itemStart=function(u){a++,r===!1&&s.onStart!==void 0&&s.onStart(u,o,a),r=!0},this.itemEnd=function(u){o++,s.onProgress!==void 0&&s.onProgress(u,o,a),o===a&&(r=!1,s.onLoad!==void 0&&s.onLoad())},this.itemError=function(u){s.onError!==void 0&&s.onError(u)},this.resolveURL=function(u){return u=u.normalize("NFC"),l?l(u):u},this.setURLModifier=function(u){return l=u,this},this.addHandler=function(u,h){return c.push(u,h),this},this.removeHandler=function(u){let h=c.indexOf(u);return h!==-1&&c.splice(h,2),this},this.getHandler=function(u){for(let h=0,d=c.length;h<d;h+=2){let f=c[h],g=c[h+1];if(f.global&&(f.lastIndex=0),f.test(u))return g}return null},this.abort=function(){return this.abortController.abort(),this._abortController=null,this}}get abortController(){return this._abortController||(this._abortController=new AbortController),this._abortController}},$g=new Rc,Pc=class{constructor(t){this.manager=t!==void 0?t:$g,this.crossOrigin="anonymous",this.withCredentials=!1,this.path="",this.resourcePath="",this.requestHeader={},this.priority="auto",this.cache="default",typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}load(){}loadAsync(t,e){let i=this;return new Promise(function(s,r){i.load(t,s,e,r)})}parse(){}setCrossOrigin(t){return this.crossOrigin=t,this}setWithCredentials(t){return this.withCredentials=t,this}setPath(t){return this.path=t,this}setResourcePath(t){return this.resourcePath=t,this}setRequestHeader(t){return this.requestHeader=t,this}setPriority(t){return this.priority=t,this}setCache(t){return this.cache=t,this}abort(){return this}};Pc.DEFAULT_MATERIAL_NAME="__DEFAULT";var ua=class extends Qe{static registerNode(t){this.prototype._lightNode=t}constructor(t,e=1){super(),this.isLight=!0,this.type="Light",this.color=new Vt(t),this.intensity=e}copy(t,e){return super.copy(t,e),this.color.copy(t.color),this.intensity=t.intensity,this}toJSON(t){let e=super.toJSON(t);return e.object.color=this.color.getHex(),e.object.intensity=this.intensity,e}},ha=class extends ua{constructor(t,e,i){super(t,i),this.isHemisphereLight=!0,this.type="HemisphereLight",this.position.copy(Qe.DEFAULT_UP),this.updateMatrix(),this.groundColor=new Vt(e)}copy(t,e){return super.copy(t,e),this.groundColor.copy(t.groundColor),this}toJSON(t){let e=super.toJSON(t);return e.object.groundColor=this.groundColor.getHex(),e}},af=new ee,Km=new N,jm=new N,Ic=class{constructor(t){this.camera=t,this.intensity=1,this.bias=0,this.biasNode=null,this.normalBias=0,this.radius=1,this.blurSamples=8,this.mapSize=new rt(512,512),this.mapType=Sn,this.map=null,this.mapPass=null,this.matrix=new ee,this.autoUpdate=!0,this.needsUpdate=!1,this._frustum=new es,this._frameExtents=new rt(1,1),this._viewportCount=1,this._viewports=[new Te(0,0,1,1)]}getViewportCount(){return this._viewportCount}getCamera(){return this.camera}getFrustum(){return this._frustum}updateMatrices(t){let e=this.camera;Km.setFromMatrixPosition(t.matrixWorld),e.position.copy(Km),jm.setFromMatrixPosition(t.target.matrixWorld),e.lookAt(jm),e.updateMatrixWorld(),this._updateMatrix(e,this.matrix,this._frustum)}_updateMatrix(t,e,i,s){af.multiplyMatrices(t.projectionMatrix,t.matrixWorldInverse),i.setFromProjectionMatrix(af,t.coordinateSystem,t.reversedDepth);let r=this._frameExtents,o=s?s.z/r.x:1,a=s?s.w/r.y:1,l=s?s.x/r.x:0,c=s?s.y/r.y:0;t.coordinateSystem===Rr||t.reversedDepth?e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,1,0,0,0,0,1):e.set(.5*o,0,0,.5*o+l,0,.5*a,0,.5*a+c,0,0,.5,.5,0,0,0,1),e.multiply(af)}getViewport(t){return this._viewports[t]}getFrameExtents(){return this._frameExtents}dispose(){this.map&&this.map.dispose(),this.mapPass&&this.mapPass.dispose()}copy(t){return this.camera=t.camera.clone(),this.intensity=t.intensity,this.bias=t.bias,this.radius=t.radius,this.autoUpdate=t.autoUpdate,this.needsUpdate=t.needsUpdate,this.normalBias=t.normalBias,this.blurSamples=t.blurSamples,this.mapSize.copy(t.mapSize),this.mapType=t.mapType,this.biasNode=t.biasNode,this}clone(){return new this.constructor().copy(this)}toJSON(){let t={};return t.intensity=this.intensity,t.bias=this.bias,t.normalBias=this.normalBias,t.radius=this.radius,t.blurSamples=this.blurSamples,t.mapSize=this.mapSize.toArray(),t.mapType=this.mapType,t.camera=this.camera.toJSON(!1).object,delete t.camera.matrix,t}},Xl=new N,ql=new We,ai=new N,fa=class extends Qe{constructor(){super(),this.isCamera=!0,this.type="Camera",this.matrixWorldInverse=new ee,this.projectionMatrix=new ee,this.projectionMatrixInverse=new ee,this.coordinateSystem=Wn,this._reversedDepth=!1}get reversedDepth(){return this._reversedDepth}copy(t,e){return super.copy(t,e),this.matrixWorldInverse.copy(t.matrixWorldInverse),this.projectionMatrix.copy(t.projectionMatrix),this.projectionMatrixInverse.copy(t.projectionMatrixInverse),this.coordinateSystem=t.coordinateSystem,this}getWorldDirection(t){return super.getWorldDirection(t).negate()}updateMatrixWorld(t){super.updateMatrixWorld(t),this.matrixWorld.decompose(Xl,ql,ai),ai.x===1&&ai.y===1&&ai.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Xl,ql,ai.set(1,1,1)).invert()}updateWorldMatrix(t,e,i=!1){super.updateWorldMatrix(t,e,i),this.matrixWorld.decompose(Xl,ql,ai),ai.x===1&&ai.y===1&&ai.z===1?this.matrixWorldInverse.copy(this.matrixWorld).invert():this.matrixWorldInverse.compose(Xl,ql,ai.set(1,1,1)).invert()}clone(){return new this.constructor().copy(this)}},ji=new N,Qm=new rt,tg=new rt,gn=class extends fa{constructor(t=50,e=1,i=.1,s=2e3){super(),this.isPerspectiveCamera=!0,this.type="PerspectiveCamera",this.fov=t,this.zoom=1,this.near=i,this.far=s,this.focus=10,this.aspect=e,this.view=null,this.filmGauge=35,this.filmOffset=0,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.fov=t.fov,this.zoom=t.zoom,this.near=t.near,this.far=t.far,this.focus=t.focus,this.aspect=t.aspect,this.view=t.view===null?null:Object.assign({},t.view),this.filmGauge=t.filmGauge,this.filmOffset=t.filmOffset,this}setFocalLength(t){let e=.5*this.getFilmHeight()/t;this.fov=Ir*2*Math.atan(e),this.updateProjectionMatrix()}getFocalLength(){let t=Math.tan(Lo*.5*this.fov);return .5*this.getFilmHeight()/t}getEffectiveFOV(){return Ir*2*Math.atan(Math.tan(Lo*.5*this.fov)/this.zoom)}getFilmWidth(){return this.filmGauge*Math.min(this.aspect,1)}getFilmHeight(){return this.filmGauge/Math.max(this.aspect,1)}getViewBounds(t,e,i){ji.set(-1,-1,.5).applyMatrix4(this.projectionMatrixInverse),e.set(ji.x,ji.y).multiplyScalar(-t/ji.z),ji.set(1,1,.5).applyMatrix4(this.projectionMatrixInverse),i.set(ji.x,ji.y).multiplyScalar(-t/ji.z)}getViewSize(t,e){return this.getViewBounds(t,Qm,tg),e.subVectors(tg,Qm)}setViewOffset(t,e,i,s,r,o){this.aspect=t/e,this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=this.near,e=t*Math.tan(Lo*.5*this.fov)/this.zoom,i=2*e,s=this.aspect*i,r=-.5*s,o=this.view;if(this.view!==null&&this.view.enabled){let l=o.fullWidth,c=o.fullHeight;r+=o.offsetX*s/l,e-=o.offsetY*i/c,s*=o.width/l,i*=o.height/c}let a=this.filmOffset;a!==0&&(r+=t*a/this.getFilmWidth()),this.projectionMatrix.makePerspective(r,r+s,e,e-i,t,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.fov=this.fov,e.object.zoom=this.zoom,e.object.near=this.near,e.object.far=this.far,e.object.focus=this.focus,e.object.aspect=this.aspect,this.view!==null&&(e.object.view=Object.assign({},this.view)),e.object.filmGauge=this.filmGauge,e.object.filmOffset=this.filmOffset,e}};var da=class extends fa{constructor(t=-1,e=1,i=1,s=-1,r=.1,o=2e3){super(),this.isOrthographicCamera=!0,this.type="OrthographicCamera",this.zoom=1,this.view=null,this.left=t,this.right=e,this.top=i,this.bottom=s,this.near=r,this.far=o,this.updateProjectionMatrix()}copy(t,e){return super.copy(t,e),this.left=t.left,this.right=t.right,this.top=t.top,this.bottom=t.bottom,this.near=t.near,this.far=t.far,this.zoom=t.zoom,this.view=t.view===null?null:Object.assign({},t.view),this}setViewOffset(t,e,i,s,r,o){this.view===null&&(this.view={enabled:!0,fullWidth:1,fullHeight:1,offsetX:0,offsetY:0,width:1,height:1}),this.view.enabled=!0,this.view.fullWidth=t,this.view.fullHeight=e,this.view.offsetX=i,this.view.offsetY=s,this.view.width=r,this.view.height=o,this.updateProjectionMatrix()}clearViewOffset(){this.view!==null&&(this.view.enabled=!1),this.updateProjectionMatrix()}updateProjectionMatrix(){let t=(this.right-this.left)/(2*this.zoom),e=(this.top-this.bottom)/(2*this.zoom),i=(this.right+this.left)/2,s=(this.top+this.bottom)/2,r=i-t,o=i+t,a=s+e,l=s-e;if(this.view!==null&&this.view.enabled){let c=(this.right-this.left)/this.view.fullWidth/this.zoom,u=(this.top-this.bottom)/this.view.fullHeight/this.zoom;r+=c*this.view.offsetX,o=r+c*this.view.width,a-=u*this.view.offsetY,l=a-u*this.view.height}this.projectionMatrix.makeOrthographic(r,o,a,l,this.near,this.far,this.coordinateSystem,this.reversedDepth),this.projectionMatrixInverse.copy(this.projectionMatrix).invert()}toJSON(t){let e=super.toJSON(t);return e.object.zoom=this.zoom,e.object.left=this.left,e.object.right=this.right,e.object.top=this.top,e.object.bottom=this.bottom,e.object.near=this.near,e.object.far=this.far,this.view!==null&&(e.object.view=Object.assign({},this.view)),e}},gf=class extends Ic{constructor(){super(new da(-5,5,5,-5,.5,500)),this.isDirectionalLightShadow=!0}},pa=class extends ua{constructor(t,e){super(t,e),this.isDirectionalLight=!0,this.type="DirectionalLight",this.position.copy(Qe.DEFAULT_UP),this.updateMatrix(),this.target=new Qe,this.shadow=new gf}dispose(){super.dispose(),this.shadow.dispose()}copy(t){return super.copy(t),this.target=t.target.clone(),this.shadow=t.shadow.clone(),this}toJSON(t){let e=super.toJSON(t);return e.object.shadow=this.shadow.toJSON(),e.object.target=this.target.uuid,e}};var wr=-90,Tr=1,Br=class extends Qe{constructor(t,e,i){super(),this.type="CubeCamera",this.renderTarget=i,this.coordinateSystem=null,this.activeMipmapLevel=0;let s=new gn(wr,Tr,t,e);s.layers=this.layers,this.add(s);let r=new gn(wr,Tr,t,e);r.layers=this.layers,this.add(r);let o=new gn(wr,Tr,t,e);o.layers=this.layers,this.add(o);let a=new gn(wr,Tr,t,e);a.layers=this.layers,this.add(a);let l=new gn(wr,Tr,t,e);l.layers=this.layers,this.add(l);let c=new gn(wr,Tr,t,e);c.layers=this.layers,this.add(c)}updateCoordinateSystem(){let t=this.coordinateSystem,e=this.children.concat(),[i,s,r,o,a,l]=e;for(let c of e)this.remove(c);if(t===Wn)i.up.set(0,1,0),i.lookAt(1,0,0),s.up.set(0,1,0),s.lookAt(-1,0,0),r.up.set(0,0,-1),r.lookAt(0,1,0),o.up.set(0,0,1),o.lookAt(0,-1,0),a.up.set(0,1,0),a.lookAt(0,0,1),l.up.set(0,1,0),l.lookAt(0,0,-1);else if(t===Rr)i.up.set(0,-1,0),i.lookAt(-1,0,0),s.up.set(0,-1,0),s.lookAt(1,0,0),r.up.set(0,0,1),r.lookAt(0,1,0),o.up.set(0,0,-1),o.lookAt(0,-1,0),a.up.set(0,-1,0),a.lookAt(0,0,1),l.up.set(0,-1,0),l.lookAt(0,0,-1);else throw new Error("THREE.CubeCamera.updateCoordinateSystem(): Invalid coordinate system: "+t);for(let c of e)this.add(c),c.updateMatrixWorld()}update(t,e){this.parent===null&&this.updateMatrixWorld();let{renderTarget:i,activeMipmapLevel:s}=this;this.coordinateSystem!==t.coordinateSystem&&(this.coordinateSystem=t.coordinateSystem,this.updateCoordinateSystem());let[r,o,a,l,c,u]=this.children,h=t.getRenderTarget(),d=t.getActiveCubeFace(),f=t.getActiveMipmapLevel(),g=t.xr.enabled;t.xr.enabled=!1;let v=i.texture.mipmapsAutoUpdate;i.texture.mipmapsAutoUpdate=!1;let _=!1;t.isWebGLRenderer===!0?_=t.state.buffers.depth.getReversed():_=t.reversedDepthBuffer,t.setRenderTarget(i,0,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,r),t.setRenderTarget(i,1,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,o),t.setRenderTarget(i,2,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,a),t.setRenderTarget(i,3,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,l),t.setRenderTarget(i,4,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,c),i.texture.mipmapsAutoUpdate=v,t.setRenderTarget(i,5,s),_&&t.autoClear===!1&&t.clearDepth(),t.render(e,u),t.setRenderTarget(h,d,f),t.xr.enabled=g,i.texture.needsPMREMUpdate=!0}},Dc=class extends gn{constructor(t=[]){super(),this.isArrayCamera=!0,this.isMultiViewCamera=!1,this.cameras=t,this.perCameraFrustumCulled=!1}};var Yf="\\[\\]\\.:\\/",yx=new RegExp("["+Yf+"]","g"),Zf="[^"+Yf+"]",xx="[^"+Yf.replace("\\.","")+"]",bx=/((?:WC+[\/:])*)/.source.replace("WC",Zf),Mx=/(WCOD+)?/.source.replace("WCOD",xx),Sx=/(?:\.(WC+)(?:\[(.+)\])?)?/.source.replace("WC",Zf),wx=/\.(WC+)(?:\[(.+)\])?/.source.replace("WC",Zf),Tx=new RegExp("^"+bx+Mx+Sx+wx+"$"),Ax=["material","materials","bones","map"],_f=class{constructor(t,e,i){let s=i||ve.parseTrackName(e);this._targetGroup=t,this._bindings=t.subscribe_(e,s)}getValue(t,e){this.bind();let i=this._targetGroup.nCachedObjects_,s=this._bindings[i];s!==void 0&&s.getValue(t,e)}setValue(t,e){let i=this._bindings;for(let s=this._targetGroup.nCachedObjects_,r=i.length;s!==r;++s)i[s].setValue(t,e)}bind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].bind()}unbind(){let t=this._bindings;for(let e=this._targetGroup.nCachedObjects_,i=t.length;e!==i;++e)t[e].unbind()}},ve=class n{constructor(t,e,i){this.path=e,this.parsedPath=i||n.parseTrackName(e),this.node=n.findNode(t,this.parsedPath.nodeName),this.rootNode=t,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}static create(t,e,i){return t&&t.isAnimationObjectGroup?new n.Composite(t,e,i):new n(t,e,i)}static sanitizeNodeName(t){return t.replace(/\s/g,"_").replace(yx,"")}static parseTrackName(t){let e=Tx.exec(t);if(e===null)throw new Error("THREE.PropertyBinding: Cannot parse trackName: "+t);let i={nodeName:e[2],objectName:e[3],objectIndex:e[4],propertyName:e[5],propertyIndex:e[6]},s=i.nodeName&&i.nodeName.lastIndexOf(".");if(s!==void 0&&s!==-1){let r=i.nodeName.substring(s+1);Ax.indexOf(r)!==-1&&(i.nodeName=i.nodeName.substring(0,s),i.objectName=r)}if(i.propertyName===null||i.propertyName.length===0)throw new Error("THREE.PropertyBinding: can not parse propertyName from trackName: "+t);return i}static findNode(t,e){if(e===void 0||e===""||e==="."||e===-1||e===t.name||e===t.uuid)return t;if(t.skeleton){let i=t.skeleton.getBoneByName(e);if(i!==void 0)return i}if(t.children){let i=function(r){for(let o=0;o<r.length;o++){let a=r[o];if(a.name===e||a.uuid===e)return a;let l=i(a.children);if(l)return l}return null},s=i(t.children);if(s)return s}return null}_getValue_unavailable(){}_setValue_unavailable(){}_getValue_direct(t,e){t[e]=this.targetObject[this.propertyName]}_getValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)t[e++]=i[s]}_getValue_arrayElement(t,e){t[e]=this.resolvedProperty[this.propertyIndex]}_getValue_toArray(t,e){this.resolvedProperty.toArray(t,e)}_setValue_direct(t,e){this.targetObject[this.propertyName]=t[e]}_setValue_direct_setNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.needsUpdate=!0}_setValue_direct_setMatrixWorldNeedsUpdate(t,e){this.targetObject[this.propertyName]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_array(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++]}_setValue_array_setNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.needsUpdate=!0}_setValue_array_setMatrixWorldNeedsUpdate(t,e){let i=this.resolvedProperty;for(let s=0,r=i.length;s!==r;++s)i[s]=t[e++];this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_arrayElement(t,e){this.resolvedProperty[this.propertyIndex]=t[e]}_setValue_arrayElement_setNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.needsUpdate=!0}_setValue_arrayElement_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty[this.propertyIndex]=t[e],this.targetObject.matrixWorldNeedsUpdate=!0}_setValue_fromArray(t,e){this.resolvedProperty.fromArray(t,e)}_setValue_fromArray_setNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.needsUpdate=!0}_setValue_fromArray_setMatrixWorldNeedsUpdate(t,e){this.resolvedProperty.fromArray(t,e),this.targetObject.matrixWorldNeedsUpdate=!0}_getValue_unbound(t,e){this.bind(),this.getValue(t,e)}_setValue_unbound(t,e){this.bind(),this.setValue(t,e)}bind(){let t=this.node,e=this.parsedPath,i=e.objectName,s=e.propertyName,r=e.propertyIndex;if(t||(t=n.findNode(this.rootNode,e.nodeName),this.node=t),this.getValue=this._getValue_unavailable,this.setValue=this._setValue_unavailable,!t){It("PropertyBinding: No target node found for track: "+this.path+".");return}if(i){let c=e.objectIndex;switch(i){case"materials":if(!t.material){Ft("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.materials){Ft("PropertyBinding: Can not bind to material.materials as node.material does not have a materials array.",this);return}t=t.material.materials;break;case"bones":if(!t.skeleton){Ft("PropertyBinding: Can not bind to bones as node does not have a skeleton.",this);return}t=t.skeleton.bones;for(let u=0;u<t.length;u++)if(t[u].name===c){c=u;break}break;case"map":if("map"in t){t=t.map;break}if(!t.material){Ft("PropertyBinding: Can not bind to material as node does not have a material.",this);return}if(!t.material.map){Ft("PropertyBinding: Can not bind to material.map as node.material does not have a map.",this);return}t=t.material.map;break;default:if(t[i]===void 0){Ft("PropertyBinding: Can not bind to objectName of node undefined.",this);return}t=t[i]}if(c!==void 0){if(t[c]===void 0){Ft("PropertyBinding: Trying to bind to objectIndex of objectName, but is undefined.",this,t);return}t=t[c]}}let o=t[s];if(o===void 0){let c=e.nodeName;Ft("PropertyBinding: Trying to update property for track: "+c+"."+s+" but it wasn't found.",t);return}let a=this.Versioning.None;this.targetObject=t,t.isMaterial===!0?a=this.Versioning.NeedsUpdate:t.isObject3D===!0&&(a=this.Versioning.MatrixWorldNeedsUpdate);let l=this.BindingType.Direct;if(r!==void 0){if(s==="morphTargetInfluences"){if(!t.geometry){Ft("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.",this);return}if(!t.geometry.morphAttributes){Ft("PropertyBinding: Can not bind to morphTargetInfluences because node does not have a geometry.morphAttributes.",this);return}t.morphTargetDictionary[r]!==void 0&&(r=t.morphTargetDictionary[r])}l=this.BindingType.ArrayElement,this.resolvedProperty=o,this.propertyIndex=r}else o.fromArray!==void 0&&o.toArray!==void 0?(l=this.BindingType.HasFromToArray,this.resolvedProperty=o):Array.isArray(o)?(l=this.BindingType.EntireArray,this.resolvedProperty=o):this.propertyName=s;this.getValue=this.GetterByBindingType[l],this.setValue=this.SetterByBindingTypeAndVersioning[l][a]}unbind(){this.node=null,this.getValue=this._getValue_unbound,this.setValue=this._setValue_unbound}};ve.Composite=_f;ve.prototype.BindingType={Direct:0,EntireArray:1,ArrayElement:2,HasFromToArray:3};ve.prototype.Versioning={None:0,NeedsUpdate:1,MatrixWorldNeedsUpdate:2};ve.prototype.GetterByBindingType=[ve.prototype._getValue_direct,ve.prototype._getValue_array,ve.prototype._getValue_arrayElement,ve.prototype._getValue_toArray];ve.prototype.SetterByBindingTypeAndVersioning=[[ve.prototype._setValue_direct,ve.prototype._setValue_direct_setNeedsUpdate,ve.prototype._setValue_direct_setMatrixWorldNeedsUpdate],[ve.prototype._setValue_array,ve.prototype._setValue_array_setNeedsUpdate,ve.prototype._setValue_array_setMatrixWorldNeedsUpdate],[ve.prototype._setValue_arrayElement,ve.prototype._setValue_arrayElement_setNeedsUpdate,ve.prototype._setValue_arrayElement_setMatrixWorldNeedsUpdate],[ve.prototype._setValue_fromArray,ve.prototype._setValue_fromArray_setNeedsUpdate,ve.prototype._setValue_fromArray_setMatrixWorldNeedsUpdate]];var NE=new Float32Array(1);var zr=class{constructor(t=1,e=0,i=0){this.radius=t,this.phi=e,this.theta=i}set(t,e,i){return this.radius=t,this.phi=e,this.theta=i,this}copy(t){return this.radius=t.radius,this.phi=t.phi,this.theta=t.theta,this}makeSafe(){return this.phi=Ht(this.phi,1e-6,Math.PI-1e-6),this}setFromVector3(t){return this.setFromCartesianCoords(t.x,t.y,t.z)}setFromCartesianCoords(t,e,i){return this.radius=Math.sqrt(t*t+e*e+i*i),this.radius===0?(this.theta=0,this.phi=0):(this.theta=Math.atan2(t,i),this.phi=Math.acos(Ht(e/this.radius,-1,1))),this}clone(){return new this.constructor().copy(this)}};var vf=class{static{this.prototype.isMatrix2=!0}constructor(t,e,i,s){this.elements=[1,0,0,1],t!==void 0&&this.set(t,e,i,s)}identity(){return this.set(1,0,0,1),this}fromArray(t,e=0){for(let i=0;i<4;i++)this.elements[i]=t[i+e];return this}set(t,e,i,s){let r=this.elements;return r[0]=t,r[2]=e,r[1]=i,r[3]=s,this}};var ma=class extends ei{constructor(t,e=null){super(),this.object=t,this.domElement=e,this.enabled=!0,this.state=-1,this.keys={},this.mouseButtons={LEFT:null,MIDDLE:null,RIGHT:null},this.touches={ONE:null,TWO:null}}connect(t){this.domElement!==null&&this.disconnect(),this.domElement=t}disconnect(){}dispose(){}update(){}};function Jf(n,t,e,i){let s=Ex(i);switch(e){case Ff:return n*t;case zc:return n*t/s.components*s.byteLength;case Vc:return n*t/s.components*s.byteLength;case fs:return n*t*2/s.components*s.byteLength;case Gc:return n*t*2/s.components*s.byteLength;case Of:return n*t*3/s.components*s.byteLength;case si:return n*t*4/s.components*s.byteLength;case Hc:return n*t*4/s.components*s.byteLength;case va:case ya:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case xa:case ba:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case Xc:case $c:return Math.max(n,16)*Math.max(t,8)/4;case Wc:case qc:return Math.max(n,8)*Math.max(t,8)/2;case Yc:case Zc:case Kc:case jc:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*8;case Jc:case Ma:case Qc:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case tu:return Math.floor((n+3)/4)*Math.floor((t+3)/4)*16;case eu:return Math.floor((n+4)/5)*Math.floor((t+3)/4)*16;case nu:return Math.floor((n+4)/5)*Math.floor((t+4)/5)*16;case iu:return Math.floor((n+5)/6)*Math.floor((t+4)/5)*16;case su:return Math.floor((n+5)/6)*Math.floor((t+5)/6)*16;case ru:return Math.floor((n+7)/8)*Math.floor((t+4)/5)*16;case ou:return Math.floor((n+7)/8)*Math.floor((t+5)/6)*16;case au:return Math.floor((n+7)/8)*Math.floor((t+7)/8)*16;case lu:return Math.floor((n+9)/10)*Math.floor((t+4)/5)*16;case cu:return Math.floor((n+9)/10)*Math.floor((t+5)/6)*16;case uu:return Math.floor((n+9)/10)*Math.floor((t+7)/8)*16;case hu:return Math.floor((n+9)/10)*Math.floor((t+9)/10)*16;case fu:return Math.floor((n+11)/12)*Math.floor((t+9)/10)*16;case du:return Math.floor((n+11)/12)*Math.floor((t+11)/12)*16;case pu:case mu:case gu:return Math.ceil(n/4)*Math.ceil(t/4)*16;case _u:case vu:return Math.ceil(n/4)*Math.ceil(t/4)*8;case Sa:case yu:return Math.ceil(n/4)*Math.ceil(t/4)*16}throw new Error(`Unable to determine texture byte length for ${e} format.`)}function Ex(n){switch(n){case Sn:case Df:return{byteLength:1,components:1};case Wr:case Lf:case ii:return{byteLength:2,components:1};case kc:case Bc:return{byteLength:2,components:4};case ni:case Oc:case Xn:return{byteLength:4,components:1};case Nf:case Uf:return{byteLength:4,components:3}}throw new Error(`THREE.TextureUtils: Unknown texture type ${n}.`)}typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("register",{detail:{revision:"187"}}));typeof window<"u"&&(window.__THREE__?It("WARNING: Multiple instances of Three.js being imported."):window.__THREE__="187");function m0(){let n=null,t=!1,e=null,i=null;function s(r,o){i=n.requestAnimationFrame(s),e(r,o)}return{start:function(){t!==!0&&e!==null&&n!==null&&(i=n.requestAnimationFrame(s),t=!0)},stop:function(){n!==null&&n.cancelAnimationFrame(i),t=!1},setAnimationLoop:function(r){e=r},setContext:function(r){n=r}}}function Nx(n){let t=new WeakMap;function e(a,l){let c=a.array,u=a.usage,h=c.byteLength,d=n.createBuffer();n.bindBuffer(l,d),n.bufferData(l,c,u),a.onUploadCallback();let f;if(c instanceof Float32Array)f=n.FLOAT;else if(typeof Float16Array<"u"&&c instanceof Float16Array)f=n.HALF_FLOAT;else if(c instanceof Uint16Array)a.isFloat16BufferAttribute?f=n.HALF_FLOAT:f=n.UNSIGNED_SHORT;else if(c instanceof Int16Array)f=n.SHORT;else if(c instanceof Uint32Array)f=n.UNSIGNED_INT;else if(c instanceof Int32Array)f=n.INT;else if(c instanceof Int8Array)f=n.BYTE;else if(c instanceof Uint8Array)f=n.UNSIGNED_BYTE;else if(c instanceof Uint8ClampedArray)f=n.UNSIGNED_BYTE;else throw new Error("THREE.WebGLAttributes: Unsupported buffer data format: "+c);return{buffer:d,type:f,bytesPerElement:c.BYTES_PER_ELEMENT,version:a.version,size:h}}function i(a,l,c){let u=l.array,h=l.updateRanges;if(n.bindBuffer(c,a),h.length===0)n.bufferSubData(c,0,u);else{h.sort((f,g)=>f.start-g.start);let d=0;for(let f=1;f<h.length;f++){let g=h[d],v=h[f];v.start<=g.start+g.count+1?g.count=Math.max(g.count,v.start+v.count-g.start):(++d,h[d]=v)}h.length=d+1;for(let f=0,g=h.length;f<g;f++){let v=h[f];n.bufferSubData(c,v.start*u.BYTES_PER_ELEMENT,u,v.start,v.count)}l.clearUpdateRanges()}l.onUploadCallback()}function s(a){return a.isInterleavedBufferAttribute&&(a=a.data),t.get(a)}function r(a){a.isInterleavedBufferAttribute&&(a=a.data);let l=t.get(a);l&&(n.deleteBuffer(l.buffer),t.delete(a))}function o(a,l){if(a.isInterleavedBufferAttribute&&(a=a.data),a.isGLBufferAttribute){let u=t.get(a);(!u||u.version<a.version)&&t.set(a,{buffer:a.buffer,type:a.type,bytesPerElement:a.elementSize,version:a.version});return}let c=t.get(a);if(c===void 0)t.set(a,e(a,l));else if(c.version<a.version){if(c.size!==a.array.byteLength)throw new Error("THREE.WebGLAttributes: The size of the buffer attribute's array buffer does not match the original size. Resizing buffer attributes is not supported.");i(c.buffer,a,l),c.version=a.version}}return{get:s,remove:r,update:o}}var Ux=`#ifdef USE_ALPHAHASH
	if ( diffuseColor.a < getAlphaHashThreshold( vPosition ) ) discard;
#endif`,Fx=`#ifdef USE_ALPHAHASH
	const float ALPHA_HASH_SCALE = 0.05;
	float hash2D( vec2 value ) {
		return fract( 1.0e4 * sin( 17.0 * value.x + 0.1 * value.y ) * ( 0.1 + abs( sin( 13.0 * value.y + value.x ) ) ) );
	}
	float hash3D( vec3 value ) {
		return hash2D( vec2( hash2D( value.xy ), value.z ) );
	}
	float getAlphaHashThreshold( vec3 position ) {
		float maxDeriv = max(
			length( dFdx( position.xyz ) ),
			length( dFdy( position.xyz ) )
		);
		float pixScale = 1.0 / ( ALPHA_HASH_SCALE * maxDeriv );
		vec2 pixScales = vec2(
			exp2( floor( log2( pixScale ) ) ),
			exp2( ceil( log2( pixScale ) ) )
		);
		vec2 alpha = vec2(
			hash3D( floor( pixScales.x * position.xyz ) ),
			hash3D( floor( pixScales.y * position.xyz ) )
		);
		float lerpFactor = fract( log2( pixScale ) );
		float x = ( 1.0 - lerpFactor ) * alpha.x + lerpFactor * alpha.y;
		float a = min( lerpFactor, 1.0 - lerpFactor );
		vec3 cases = vec3(
			x * x / ( 2.0 * a * ( 1.0 - a ) ),
			( x - 0.5 * a ) / ( 1.0 - a ),
			1.0 - ( ( 1.0 - x ) * ( 1.0 - x ) / ( 2.0 * a * ( 1.0 - a ) ) )
		);
		float threshold = ( x < ( 1.0 - a ) )
			? ( ( x < a ) ? cases.x : cases.y )
			: cases.z;
		return clamp( threshold , 1.0e-6, 1.0 );
	}
#endif`,Ox=`#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, vAlphaMapUv ).g;
#endif`,kx=`#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,Bx=`#ifdef USE_ALPHATEST
	#ifdef ALPHA_TO_COVERAGE
	diffuseColor.a = smoothstep( alphaTest, alphaTest + fwidth( diffuseColor.a ), diffuseColor.a );
	if ( diffuseColor.a == 0.0 ) discard;
	#else
	if ( diffuseColor.a < alphaTest ) discard;
	#endif
#endif`,zx=`#ifdef USE_ALPHATEST
	uniform float alphaTest;
#endif`,Vx=`#ifdef USE_AOMAP
	float ambientOcclusion = ( texture2D( aoMap, vAoMapUv ).r - 1.0 ) * aoMapIntensity + 1.0;
	reflectedLight.indirectDiffuse *= ambientOcclusion;
	#if defined( USE_CLEARCOAT ) 
		clearcoatSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_SHEEN ) 
		sheenSpecularIndirect *= ambientOcclusion;
	#endif
	#if defined( USE_ENVMAP ) && defined( STANDARD )
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		reflectedLight.indirectSpecular *= computeSpecularOcclusion( dotNV, ambientOcclusion, material.roughness );
	#endif
#endif`,Gx=`#ifdef USE_AOMAP
	uniform sampler2D aoMap;
	uniform float aoMapIntensity;
#endif`,Hx=`#ifdef USE_BATCHING
	#if ! defined( GL_ANGLE_multi_draw )
	#define gl_DrawID _gl_DrawID
	uniform int _gl_DrawID;
	#endif
	uniform highp sampler2D batchingTexture;
	uniform highp usampler2D batchingIdTexture;
	mat4 getBatchingMatrix( const in float i ) {
		int size = textureSize( batchingTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( batchingTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( batchingTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( batchingTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( batchingTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
	float getIndirectIndex( const in int i ) {
		int size = textureSize( batchingIdTexture, 0 ).x;
		int x = i % size;
		int y = i / size;
		return float( texelFetch( batchingIdTexture, ivec2( x, y ), 0 ).r );
	}
#endif
#ifdef USE_BATCHING_COLOR
	uniform sampler2D batchingColorTexture;
	vec4 getBatchingColor( const in float i ) {
		int size = textureSize( batchingColorTexture, 0 ).x;
		int j = int( i );
		int x = j % size;
		int y = j / size;
		return texelFetch( batchingColorTexture, ivec2( x, y ), 0 );
	}
#endif`,Wx=`#ifdef USE_BATCHING
	mat4 batchingMatrix = getBatchingMatrix( getIndirectIndex( gl_DrawID ) );
#endif`,Xx=`vec3 transformed = vec3( position );
#ifdef USE_ALPHAHASH
	vPosition = vec3( position );
#endif`,qx=`vec3 objectNormal = vec3( normal );
#ifdef USE_TANGENT
	vec3 objectTangent = vec3( tangent.xyz );
#endif`,$x=`float G_BlinnPhong_Implicit( ) {
	return 0.25;
}
float D_BlinnPhong( const in float shininess, const in float dotNH ) {
	return RECIPROCAL_PI * ( shininess * 0.5 + 1.0 ) * pow( dotNH, shininess );
}
vec3 BRDF_BlinnPhong( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 specularColor, const in float shininess ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( specularColor, 1.0, dotVH );
	float G = G_BlinnPhong_Implicit( );
	float D = D_BlinnPhong( shininess, dotNH );
	return F * ( G * D );
} // validated`,Yx=`#ifdef USE_IRIDESCENCE
	const mat3 XYZ_TO_REC709 = mat3(
		 3.2404542, -0.9692660,  0.0556434,
		-1.5371385,  1.8760108, -0.2040259,
		-0.4985314,  0.0415560,  1.0572252
	);
	vec3 Fresnel0ToIor( vec3 fresnel0 ) {
		vec3 sqrtF0 = sqrt( fresnel0 );
		return ( vec3( 1.0 ) + sqrtF0 ) / ( vec3( 1.0 ) - sqrtF0 );
	}
	vec3 IorToFresnel0( vec3 transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - vec3( incidentIor ) ) / ( transmittedIor + vec3( incidentIor ) ) );
	}
	float IorToFresnel0( float transmittedIor, float incidentIor ) {
		return pow2( ( transmittedIor - incidentIor ) / ( transmittedIor + incidentIor ));
	}
	vec3 evalSensitivity( float OPD, vec3 shift ) {
		float phase = 2.0 * PI * OPD * 1.0e-9;
		vec3 val = vec3( 5.4856e-13, 4.4201e-13, 5.2481e-13 );
		vec3 pos = vec3( 1.6810e+06, 1.7953e+06, 2.2084e+06 );
		vec3 var = vec3( 4.3278e+09, 9.3046e+09, 6.6121e+09 );
		vec3 xyz = val * sqrt( 2.0 * PI * var ) * cos( pos * phase + shift ) * exp( - pow2( phase ) * var );
		xyz.x += 9.7470e-14 * sqrt( 2.0 * PI * 4.5282e+09 ) * cos( 2.2399e+06 * phase + shift[ 0 ] ) * exp( - 4.5282e+09 * pow2( phase ) );
		xyz /= 1.0685e-7;
		vec3 rgb = XYZ_TO_REC709 * xyz;
		return rgb;
	}
	vec3 evalIridescence( float outsideIOR, float eta2, float cosTheta1, float thinFilmThickness, vec3 baseF0 ) {
		vec3 I;
		float iridescenceIOR = mix( outsideIOR, eta2, smoothstep( 0.0, 0.03, thinFilmThickness ) );
		float sinTheta2Sq = pow2( outsideIOR / iridescenceIOR ) * ( 1.0 - pow2( cosTheta1 ) );
		float cosTheta2Sq = 1.0 - sinTheta2Sq;
		if ( cosTheta2Sq < 0.0 ) {
			return vec3( 1.0 );
		}
		float cosTheta2 = sqrt( cosTheta2Sq );
		float R0 = IorToFresnel0( iridescenceIOR, outsideIOR );
		float R12 = F_Schlick( R0, 1.0, cosTheta1 );
		float T121 = 1.0 - R12;
		float phi12 = 0.0;
		if ( iridescenceIOR < outsideIOR ) phi12 = PI;
		float phi21 = PI - phi12;
		vec3 baseIOR = Fresnel0ToIor( clamp( baseF0, 0.0, 0.9999 ) );		vec3 R1 = IorToFresnel0( baseIOR, iridescenceIOR );
		vec3 R23 = F_Schlick( R1, 1.0, cosTheta2 );
		vec3 phi23 = vec3( 0.0 );
		if ( baseIOR[ 0 ] < iridescenceIOR ) phi23[ 0 ] = PI;
		if ( baseIOR[ 1 ] < iridescenceIOR ) phi23[ 1 ] = PI;
		if ( baseIOR[ 2 ] < iridescenceIOR ) phi23[ 2 ] = PI;
		float OPD = 2.0 * iridescenceIOR * thinFilmThickness * cosTheta2;
		vec3 phi = vec3( phi21 ) + phi23;
		vec3 R123 = clamp( R12 * R23, 1e-5, 0.9999 );
		vec3 r123 = sqrt( R123 );
		vec3 Rs = pow2( T121 ) * R23 / ( vec3( 1.0 ) - R123 );
		vec3 C0 = R12 + Rs;
		I = C0;
		vec3 Cm = Rs - T121;
		for ( int m = 1; m <= 2; ++ m ) {
			Cm *= r123;
			vec3 Sm = 2.0 * evalSensitivity( float( m ) * OPD, float( m ) * phi );
			I += Cm * Sm;
		}
		return max( I, vec3( 0.0 ) );
	}
#endif`,Zx=`#ifdef USE_BUMPMAP
	uniform sampler2D bumpMap;
	uniform float bumpScale;
	vec2 dHdxy_fwd() {
		vec2 dSTdx = dFdx( vBumpMapUv );
		vec2 dSTdy = dFdy( vBumpMapUv );
		float Hll = bumpScale * texture2D( bumpMap, vBumpMapUv ).x;
		float dBx = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdx ).x - Hll;
		float dBy = bumpScale * texture2D( bumpMap, vBumpMapUv + dSTdy ).x - Hll;
		return vec2( dBx, dBy );
	}
	vec3 perturbNormalArb( vec3 surf_pos, vec3 surf_norm, vec2 dHdxy, float faceDirection ) {
		vec3 vSigmaX = normalize( dFdx( surf_pos.xyz ) );
		vec3 vSigmaY = normalize( dFdy( surf_pos.xyz ) );
		vec3 vN = surf_norm;
		vec3 R1 = cross( vSigmaY, vN );
		vec3 R2 = cross( vN, vSigmaX );
		float fDet = dot( vSigmaX, R1 ) * faceDirection;
		vec3 vGrad = sign( fDet ) * ( dHdxy.x * R1 + dHdxy.y * R2 );
		return normalize( abs( fDet ) * surf_norm - vGrad );
	}
#endif`,Jx=`#if NUM_CLIPPING_PLANES > 0
	vec4 plane;
	#ifdef ALPHA_TO_COVERAGE
		float distanceToPlane, distanceGradient;
		float clipOpacity = 1.0;
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
			distanceGradient = fwidth( distanceToPlane ) / 2.0;
			clipOpacity *= smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			if ( clipOpacity == 0.0 ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			float unionClipOpacity = 1.0;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				distanceToPlane = - dot( vClipPosition, plane.xyz ) + plane.w;
				distanceGradient = fwidth( distanceToPlane ) / 2.0;
				unionClipOpacity *= 1.0 - smoothstep( - distanceGradient, distanceGradient, distanceToPlane );
			}
			#pragma unroll_loop_end
			clipOpacity *= 1.0 - unionClipOpacity;
		#endif
		diffuseColor.a *= clipOpacity;
		if ( diffuseColor.a == 0.0 ) discard;
	#else
		#pragma unroll_loop_start
		for ( int i = 0; i < UNION_CLIPPING_PLANES; i ++ ) {
			plane = clippingPlanes[ i ];
			if ( dot( vClipPosition, plane.xyz ) > plane.w ) discard;
		}
		#pragma unroll_loop_end
		#if UNION_CLIPPING_PLANES < NUM_CLIPPING_PLANES
			bool clipped = true;
			#pragma unroll_loop_start
			for ( int i = UNION_CLIPPING_PLANES; i < NUM_CLIPPING_PLANES; i ++ ) {
				plane = clippingPlanes[ i ];
				clipped = ( dot( vClipPosition, plane.xyz ) > plane.w ) && clipped;
			}
			#pragma unroll_loop_end
			if ( clipped ) discard;
		#endif
	#endif
#endif`,Kx=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
	uniform vec4 clippingPlanes[ NUM_CLIPPING_PLANES ];
#endif`,jx=`#if NUM_CLIPPING_PLANES > 0
	varying vec3 vClipPosition;
#endif`,Qx=`#if NUM_CLIPPING_PLANES > 0
	vClipPosition = - mvPosition.xyz;
#endif`,tb=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	diffuseColor *= vColor;
#endif`,eb=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA )
	varying vec4 vColor;
#endif`,nb=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	varying vec4 vColor;
#endif`,ib=`#if defined( USE_COLOR ) || defined( USE_COLOR_ALPHA ) || defined( USE_INSTANCING_COLOR ) || defined( USE_BATCHING_COLOR )
	vColor = vec4( 1.0 );
#endif
#ifdef USE_COLOR_ALPHA
	vColor *= color;
#elif defined( USE_COLOR )
	vColor.rgb *= color;
#endif
#ifdef USE_INSTANCING_COLOR
	vColor.rgb *= instanceColor.rgb;
#endif
#ifdef USE_BATCHING_COLOR
	vColor *= getBatchingColor( getIndirectIndex( gl_DrawID ) );
#endif`,sb=`#define PI 3.141592653589793
#define PI2 6.283185307179586
#define PI_HALF 1.5707963267948966
#define RECIPROCAL_PI 0.3183098861837907
#define RECIPROCAL_PI2 0.15915494309189535
#define EPSILON 1e-6
#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
#define whiteComplement( a ) ( 1.0 - saturate( a ) )
float pow2( const in float x ) { return x*x; }
vec3 pow2( const in vec3 x ) { return x*x; }
float pow3( const in float x ) { return x*x*x; }
float pow4( const in float x ) { float x2 = x*x; return x2*x2; }
float max3( const in vec3 v ) { return max( max( v.x, v.y ), v.z ); }
float average( const in vec3 v ) { return dot( v, vec3( 0.3333333 ) ); }
highp float rand( const in vec2 uv ) {
	const highp float a = 12.9898, b = 78.233, c = 43758.5453;
	highp float dt = dot( uv.xy, vec2( a,b ) ), sn = mod( dt, PI );
	return fract( sin( sn ) * c );
}
#ifdef HIGH_PRECISION
	float precisionSafeLength( vec3 v ) { return length( v ); }
#else
	float precisionSafeLength( vec3 v ) {
		float maxComponent = max3( abs( v ) );
		return length( v / maxComponent ) * maxComponent;
	}
#endif
struct IncidentLight {
	vec3 color;
	vec3 direction;
	bool visible;
};
struct ReflectedLight {
	vec3 directDiffuse;
	vec3 directSpecular;
	vec3 indirectDiffuse;
	vec3 indirectSpecular;
};
#ifdef USE_ALPHAHASH
	varying vec3 vPosition;
#endif
vec3 transformDirection( in vec3 dir, in mat4 matrix ) {
	return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );
}
#define inverseTransformDirection transformDirectionByInverseViewMatrix
vec3 transformNormalByInverseViewMatrix( in vec3 normal, in mat4 viewMatrix ) {
	return normalize( ( vec4( normal, 0.0 ) * viewMatrix ).xyz );
}
vec3 transformDirectionByInverseViewMatrix( in vec3 dir, in mat4 viewMatrix ) {
	return normalize( ( vec4( dir, 0.0 ) * viewMatrix ).xyz );
}
bool isPerspectiveMatrix( mat4 m ) {
	return m[ 2 ][ 3 ] == - 1.0;
}
vec2 equirectUv( in vec3 dir ) {
	float u = atan( dir.z, dir.x ) * RECIPROCAL_PI2 + 0.5;
	float v = asin( clamp( dir.y, - 1.0, 1.0 ) ) * RECIPROCAL_PI + 0.5;
	return vec2( u, v );
}
vec3 BRDF_Lambert( const in vec3 diffuseColor ) {
	return RECIPROCAL_PI * diffuseColor;
}
vec3 F_Schlick( const in vec3 f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
}
float F_Schlick( const in float f0, const in float f90, const in float dotVH ) {
	float fresnel = exp2( ( - 5.55473 * dotVH - 6.98316 ) * dotVH );
	return f0 * ( 1.0 - fresnel ) + ( f90 * fresnel );
} // validated`,rb=`vec3 transformedNormal = objectNormal;
#ifdef USE_TANGENT
	vec3 transformedTangent = objectTangent;
#endif
#ifdef USE_BATCHING
	mat3 bm = mat3( batchingMatrix );
	transformedNormal /= vec3( dot( bm[ 0 ], bm[ 0 ] ), dot( bm[ 1 ], bm[ 1 ] ), dot( bm[ 2 ], bm[ 2 ] ) );
	transformedNormal = bm * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = bm * transformedTangent;
	#endif
#endif
#ifdef USE_INSTANCING
	mat3 im = mat3( instanceMatrix );
	transformedNormal /= vec3( dot( im[ 0 ], im[ 0 ] ), dot( im[ 1 ], im[ 1 ] ), dot( im[ 2 ], im[ 2 ] ) );
	transformedNormal = im * transformedNormal;
	#ifdef USE_TANGENT
		transformedTangent = im * transformedTangent;
	#endif
#endif
transformedNormal = normalMatrix * transformedNormal;
#ifdef FLIP_SIDED
	transformedNormal = - transformedNormal;
#endif
#ifdef USE_TANGENT
	transformedTangent = ( modelViewMatrix * vec4( transformedTangent, 0.0 ) ).xyz;
#endif`,ob=`#ifdef USE_DISPLACEMENTMAP
	uniform sampler2D displacementMap;
	uniform float displacementScale;
	uniform float displacementBias;
#endif`,ab=`#ifdef USE_DISPLACEMENTMAP
	transformed += normalize( objectNormal ) * ( texture2D( displacementMap, vDisplacementMapUv ).x * displacementScale + displacementBias );
#endif`,lb=`#ifdef USE_EMISSIVEMAP
	vec4 emissiveColor = texture2D( emissiveMap, vEmissiveMapUv );
	#ifdef DECODE_VIDEO_TEXTURE_EMISSIVE
		emissiveColor = sRGBTransferEOTF( emissiveColor );
	#endif
	totalEmissiveRadiance *= emissiveColor.rgb;
#endif`,cb=`#ifdef USE_EMISSIVEMAP
	uniform sampler2D emissiveMap;
#endif`,ub="gl_FragColor = linearToOutputTexel( gl_FragColor );",hb=`vec4 LinearTransferOETF( in vec4 value ) {
	return value;
}
vec4 sRGBTransferEOTF( in vec4 value ) {
	return vec4( mix( pow( value.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), value.rgb * 0.0773993808, vec3( lessThanEqual( value.rgb, vec3( 0.04045 ) ) ) ), value.a );
}
vec4 sRGBTransferOETF( in vec4 value ) {
	return vec4( mix( pow( value.rgb, vec3( 0.41666 ) ) * 1.055 - vec3( 0.055 ), value.rgb * 12.92, vec3( lessThanEqual( value.rgb, vec3( 0.0031308 ) ) ) ), value.a );
}`,fb=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vec3 cameraToFrag;
		if ( isOrthographic ) {
			cameraToFrag = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToFrag = normalize( vWorldPosition - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vec3 reflectVec = reflect( cameraToFrag, worldNormal );
		#else
			vec3 reflectVec = refract( cameraToFrag, worldNormal, refractionRatio );
		#endif
	#else
		vec3 reflectVec = vReflect;
	#endif
	#ifdef ENVMAP_TYPE_CUBE
		vec4 envColor = textureCube( envMap, envMapRotation * reflectVec );
		#ifdef ENVMAP_BLENDING_MULTIPLY
			outgoingLight = mix( outgoingLight, outgoingLight * envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_MIX )
			outgoingLight = mix( outgoingLight, envColor.xyz, specularStrength * reflectivity );
		#elif defined( ENVMAP_BLENDING_ADD )
			outgoingLight += envColor.xyz * specularStrength * reflectivity;
		#endif
	#endif
#endif`,db=`#ifdef USE_ENVMAP
	uniform float envMapIntensity;
	uniform mat3 envMapRotation;
	uniform samplerCube envMap;
	#ifdef ENVMAP_TYPE_PMREM
		float roughnessToMip( const in float roughness ) {
			float r = clamp( roughness, 0.0, 1.0 );
			return ENVMAP_MAX_LOD * r * ( 2.0 - r );
		}
	#endif
#endif`,pb=`#ifdef USE_ENVMAP
	uniform float reflectivity;
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		varying vec3 vWorldPosition;
		uniform float refractionRatio;
	#else
		varying vec3 vReflect;
	#endif
#endif`,mb=`#ifdef USE_ENVMAP
	#if defined( USE_BUMPMAP ) || defined( USE_NORMALMAP ) || defined( PHONG ) || defined( LAMBERT )
		#define ENV_WORLDPOS
	#endif
	#ifdef ENV_WORLDPOS
		
		varying vec3 vWorldPosition;
	#else
		varying vec3 vReflect;
		uniform float refractionRatio;
	#endif
#endif`,gb=`#ifdef USE_ENVMAP
	#ifdef ENV_WORLDPOS
		vWorldPosition = worldPosition.xyz;
	#else
		vec3 cameraToVertex;
		if ( isOrthographic ) {
			cameraToVertex = normalize( vec3( - viewMatrix[ 0 ][ 2 ], - viewMatrix[ 1 ][ 2 ], - viewMatrix[ 2 ][ 2 ] ) );
		} else {
			cameraToVertex = normalize( worldPosition.xyz - cameraPosition );
		}
		vec3 worldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
		#ifdef ENVMAP_MODE_REFLECTION
			vReflect = reflect( cameraToVertex, worldNormal );
		#else
			vReflect = refract( cameraToVertex, worldNormal, refractionRatio );
		#endif
	#endif
#endif`,_b=`#ifdef USE_FOG
	vFogDepth = - mvPosition.z;
#endif`,vb=`#ifdef USE_FOG
	varying float vFogDepth;
#endif`,yb=`#ifdef USE_FOG
	#ifdef FOG_EXP2
		float fogFactor = 1.0 - exp( - fogDensity * fogDensity * vFogDepth * vFogDepth );
	#else
		float fogFactor = smoothstep( fogNear, fogFar, vFogDepth );
	#endif
	gl_FragColor.rgb = mix( gl_FragColor.rgb, fogColor, fogFactor );
#endif`,xb=`#ifdef USE_FOG
	uniform vec3 fogColor;
	varying float vFogDepth;
	#ifdef FOG_EXP2
		uniform float fogDensity;
	#else
		uniform float fogNear;
		uniform float fogFar;
	#endif
#endif`,bb=`#ifdef USE_GRADIENTMAP
	uniform sampler2D gradientMap;
#endif
vec3 getGradientIrradiance( vec3 normal, vec3 lightDirection ) {
	float dotNL = dot( normal, lightDirection );
	vec2 coord = vec2( dotNL * 0.5 + 0.5, 0.0 );
	#ifdef USE_GRADIENTMAP
		return vec3( texture2D( gradientMap, coord ).r );
	#else
		vec2 fw = fwidth( coord ) * 0.5;
		return mix( vec3( 0.7 ), vec3( 1.0 ), smoothstep( 0.7 - fw.x, 0.7 + fw.x, coord.x ) );
	#endif
}`,Mb=`#ifdef USE_LIGHTMAP
	uniform sampler2D lightMap;
	uniform float lightMapIntensity;
#endif`,Sb=`LambertMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularStrength = specularStrength;`,wb=`varying vec3 vViewPosition;
struct LambertMaterial {
	vec3 diffuseColor;
	float specularStrength;
};
void RE_Direct_Lambert( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Lambert( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in LambertMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Lambert
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Lambert`,Tb=`uniform bool receiveShadow;
uniform vec3 ambientLightColor;
#if defined( USE_LIGHT_PROBES )
	uniform vec3 lightProbe[ 9 ];
#endif
vec3 shGetIrradianceAt( in vec3 normal, in vec3 shCoefficients[ 9 ] ) {
	float x = normal.x, y = normal.y, z = normal.z;
	vec3 result = shCoefficients[ 0 ] * 0.886227;
	result += shCoefficients[ 1 ] * 2.0 * 0.511664 * y;
	result += shCoefficients[ 2 ] * 2.0 * 0.511664 * z;
	result += shCoefficients[ 3 ] * 2.0 * 0.511664 * x;
	result += shCoefficients[ 4 ] * 2.0 * 0.429043 * x * y;
	result += shCoefficients[ 5 ] * 2.0 * 0.429043 * y * z;
	result += shCoefficients[ 6 ] * ( 0.743125 * z * z - 0.247708 );
	result += shCoefficients[ 7 ] * 2.0 * 0.429043 * x * z;
	result += shCoefficients[ 8 ] * 0.429043 * ( x * x - y * y );
	return result;
}
vec3 getLightProbeIrradiance( const in vec3 lightProbe[ 9 ], const in vec3 normal ) {
	vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec3 irradiance = shGetIrradianceAt( worldNormal, lightProbe );
	return irradiance;
}
vec3 getAmbientLightIrradiance( const in vec3 ambientLightColor ) {
	vec3 irradiance = ambientLightColor;
	return irradiance;
}
float getDistanceAttenuation( const in float lightDistance, const in float cutoffDistance, const in float decayExponent ) {
	float distanceFalloff = 1.0 / max( pow( lightDistance, decayExponent ), 0.01 );
	if ( cutoffDistance > 0.0 ) {
		distanceFalloff *= pow2( saturate( 1.0 - pow4( lightDistance / cutoffDistance ) ) );
	}
	return distanceFalloff;
}
float getSpotAttenuation( const in float coneCosine, const in float penumbraCosine, const in float angleCosine ) {
	return smoothstep( coneCosine, penumbraCosine, angleCosine );
}
#if NUM_SUN_LIGHTS > 0
	struct SunLight {
		vec3 direction;
		vec3 color;
	};
	uniform SunLight sunLights[ NUM_SUN_LIGHTS ];
	void getSunLightInfo( const in SunLight sunLight, out IncidentLight light ) {
		light.color = sunLight.color;
		light.direction = sunLight.direction;
		light.visible = true;
	}
#endif
#if NUM_DIR_LIGHTS > 0
	struct DirectionalLight {
		vec3 direction;
		vec3 color;
	};
	uniform DirectionalLight directionalLights[ NUM_DIR_LIGHTS ];
	void getDirectionalLightInfo( const in DirectionalLight directionalLight, out IncidentLight light ) {
		light.color = directionalLight.color;
		light.direction = directionalLight.direction;
		light.visible = true;
	}
#endif
#if NUM_POINT_LIGHTS > 0
	struct PointLight {
		vec3 position;
		vec3 color;
		float distance;
		float decay;
	};
	uniform PointLight pointLights[ NUM_POINT_LIGHTS ];
	void getPointLightInfo( const in PointLight pointLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = pointLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float lightDistance = length( lVector );
		light.color = pointLight.color;
		light.color *= getDistanceAttenuation( lightDistance, pointLight.distance, pointLight.decay );
		light.visible = ( light.color != vec3( 0.0 ) );
	}
#endif
#if NUM_SPOT_LIGHTS > 0
	struct SpotLight {
		vec3 position;
		vec3 direction;
		vec3 color;
		float distance;
		float decay;
		float coneCos;
		float penumbraCos;
	};
	uniform SpotLight spotLights[ NUM_SPOT_LIGHTS ];
	void getSpotLightInfo( const in SpotLight spotLight, const in vec3 geometryPosition, out IncidentLight light ) {
		vec3 lVector = spotLight.position - geometryPosition;
		light.direction = normalize( lVector );
		float angleCos = dot( light.direction, spotLight.direction );
		float spotAttenuation = getSpotAttenuation( spotLight.coneCos, spotLight.penumbraCos, angleCos );
		if ( spotAttenuation > 0.0 ) {
			float lightDistance = length( lVector );
			light.color = spotLight.color * spotAttenuation;
			light.color *= getDistanceAttenuation( lightDistance, spotLight.distance, spotLight.decay );
			light.visible = ( light.color != vec3( 0.0 ) );
		} else {
			light.color = vec3( 0.0 );
			light.visible = false;
		}
	}
#endif
#if NUM_RECT_AREA_LIGHTS > 0
	struct RectAreaLight {
		vec3 color;
		vec3 position;
		vec3 halfWidth;
		vec3 halfHeight;
	};
	uniform sampler2D ltc_1;	uniform sampler2D ltc_2;
	uniform RectAreaLight rectAreaLights[ NUM_RECT_AREA_LIGHTS ];
#endif
#if NUM_HEMI_LIGHTS > 0
	struct HemisphereLight {
		vec3 direction;
		vec3 skyColor;
		vec3 groundColor;
	};
	uniform HemisphereLight hemisphereLights[ NUM_HEMI_LIGHTS ];
	vec3 getHemisphereLightIrradiance( const in HemisphereLight hemiLight, const in vec3 normal ) {
		float dotNL = dot( normal, hemiLight.direction );
		float hemiDiffuseWeight = 0.5 * dotNL + 0.5;
		vec3 irradiance = mix( hemiLight.groundColor, hemiLight.skyColor, hemiDiffuseWeight );
		return irradiance;
	}
#endif
#include <lightprobes_pars_fragment>`,Ab=`#ifdef USE_ENVMAP
	vec3 getIBLIrradiance( const in vec3 normal ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 worldNormal = transformNormalByInverseViewMatrix( normal, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * worldNormal, ENVMAP_MAX_LOD );
			return PI * envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	vec3 getIBLRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
		#ifdef ENVMAP_TYPE_PMREM
			vec3 reflectVec = reflect( - viewDir, normal );
			reflectVec = normalize( mix( reflectVec, normal, pow4( roughness ) ) );
			reflectVec = transformDirectionByInverseViewMatrix( reflectVec, viewMatrix );
			vec4 envMapColor = textureLod( envMap, envMapRotation * reflectVec, roughnessToMip( roughness ) );
			return envMapColor.rgb * envMapIntensity;
		#else
			return vec3( 0.0 );
		#endif
	}
	#ifdef USE_RETROREFLECTION
		vec3 getIBLRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 retroVec = normalize( mix( viewDir, normal, pow4( roughness ) ) );
				retroVec = transformDirectionByInverseViewMatrix( retroVec, viewMatrix );
				vec4 envMapColor = textureLod( envMap, envMapRotation * retroVec, roughnessToMip( roughness ) );
				return envMapColor.rgb * envMapIntensity;
			#else
				return vec3( 0.0 );
			#endif
		}
	#endif
	#ifdef USE_ANISOTROPY
		vec3 getIBLAnisotropyRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
			#ifdef ENVMAP_TYPE_PMREM
				vec3 bentNormal = cross( bitangent, viewDir );
				bentNormal = normalize( cross( bentNormal, bitangent ) );
				bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
				return getIBLRadiance( viewDir, bentNormal, roughness );
			#else
				return vec3( 0.0 );
			#endif
		}
		#ifdef USE_RETROREFLECTION
			vec3 getIBLAnisotropyRetroRadiance( const in vec3 viewDir, const in vec3 normal, const in float roughness, const in vec3 bitangent, const in float anisotropy ) {
				#ifdef ENVMAP_TYPE_PMREM
					vec3 bentNormal = cross( bitangent, viewDir );
					bentNormal = normalize( cross( bentNormal, bitangent ) );
					bentNormal = normalize( mix( bentNormal, normal, pow2( pow2( 1.0 - anisotropy * ( 1.0 - roughness ) ) ) ) );
					return getIBLRetroRadiance( viewDir, bentNormal, roughness );
				#else
					return vec3( 0.0 );
				#endif
			}
		#endif
	#endif
#endif`,Eb=`ToonMaterial material;
material.diffuseColor = diffuseColor.rgb;`,Cb=`varying vec3 vViewPosition;
struct ToonMaterial {
	vec3 diffuseColor;
};
void RE_Direct_Toon( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 irradiance = getGradientIrradiance( geometryNormal, directLight.direction ) * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
void RE_IndirectDiffuse_Toon( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in ToonMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_Toon
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Toon`,Rb=`BlinnPhongMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.specularColor = specular;
material.specularShininess = shininess;
material.specularStrength = specularStrength;`,Pb=`varying vec3 vViewPosition;
struct BlinnPhongMaterial {
	vec3 diffuseColor;
	vec3 specularColor;
	float specularShininess;
	float specularStrength;
};
void RE_Direct_BlinnPhong( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	reflectedLight.directDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
	reflectedLight.directSpecular += irradiance * BRDF_BlinnPhong( directLight.direction, geometryViewDir, geometryNormal, material.specularColor, material.specularShininess ) * material.specularStrength;
}
void RE_IndirectDiffuse_BlinnPhong( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in BlinnPhongMaterial material, inout ReflectedLight reflectedLight ) {
	reflectedLight.indirectDiffuse += irradiance * BRDF_Lambert( material.diffuseColor );
}
#define RE_Direct				RE_Direct_BlinnPhong
#define RE_IndirectDiffuse		RE_IndirectDiffuse_BlinnPhong`,Ib=`PhysicalMaterial material;
material.diffuseColor = diffuseColor.rgb;
material.diffuseContribution = diffuseColor.rgb * ( 1.0 - metalnessFactor );
material.metalness = metalnessFactor;
vec3 dxy = max( abs( dFdx( nonPerturbedNormal ) ), abs( dFdy( nonPerturbedNormal ) ) );
float geometryRoughness = max( max( dxy.x, dxy.y ), dxy.z );
material.roughness = max( roughnessFactor, 0.045 );
material.roughness += geometryRoughness;
material.roughness = min( material.roughness, 1.0 );
#ifdef USE_DIFFUSE_ROUGHNESS
	float diffuseRoughnessFactor = diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		diffuseRoughnessFactor *= texture2D( diffuseRoughnessMap, vDiffuseRoughnessMapUv ).r;
	#endif
	material.diffuseRoughness = saturate( diffuseRoughnessFactor );
#endif
#ifdef IOR
	material.ior = ior;
	#ifdef USE_SPECULAR
		float specularIntensityFactor = specularIntensity;
		vec3 specularColorFactor = specularColor;
		#ifdef USE_SPECULAR_COLORMAP
			specularColorFactor *= texture2D( specularColorMap, vSpecularColorMapUv ).rgb;
		#endif
		#ifdef USE_SPECULAR_INTENSITYMAP
			specularIntensityFactor *= texture2D( specularIntensityMap, vSpecularIntensityMapUv ).a;
		#endif
		material.specularF90 = mix( specularIntensityFactor, 1.0, metalnessFactor );
	#else
		float specularIntensityFactor = 1.0;
		vec3 specularColorFactor = vec3( 1.0 );
		material.specularF90 = 1.0;
	#endif
	material.specularColor = min( pow2( ( material.ior - 1.0 ) / ( material.ior + 1.0 ) ) * specularColorFactor, vec3( 1.0 ) ) * specularIntensityFactor;
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
#else
	material.specularColor = vec3( 0.04 );
	material.specularColorBlended = mix( material.specularColor, diffuseColor.rgb, metalnessFactor );
	material.specularF90 = 1.0;
#endif
#ifdef USE_CLEARCOAT
	material.clearcoat = clearcoat;
	material.clearcoatRoughness = clearcoatRoughness;
	material.clearcoatF0 = vec3( 0.04 );
	material.clearcoatF90 = 1.0;
	#ifdef USE_CLEARCOATMAP
		material.clearcoat *= texture2D( clearcoatMap, vClearcoatMapUv ).x;
	#endif
	#ifdef USE_CLEARCOAT_ROUGHNESSMAP
		material.clearcoatRoughness *= texture2D( clearcoatRoughnessMap, vClearcoatRoughnessMapUv ).y;
	#endif
	material.clearcoat = saturate( material.clearcoat );	material.clearcoatRoughness = max( material.clearcoatRoughness, 0.045 );
	material.clearcoatRoughness += geometryRoughness;
	material.clearcoatRoughness = min( material.clearcoatRoughness, 1.0 );
#endif
#ifdef USE_DISPERSION
	material.dispersion = dispersion;
#endif
#ifdef USE_RETROREFLECTION
	material.retroreflectivity = retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	material.iridescence = iridescence;
	material.iridescenceIOR = iridescenceIOR;
	#ifdef USE_IRIDESCENCEMAP
		material.iridescence *= texture2D( iridescenceMap, vIridescenceMapUv ).r;
	#endif
	#ifdef USE_IRIDESCENCE_THICKNESSMAP
		material.iridescenceThickness = (iridescenceThicknessMaximum - iridescenceThicknessMinimum) * texture2D( iridescenceThicknessMap, vIridescenceThicknessMapUv ).g + iridescenceThicknessMinimum;
	#else
		material.iridescenceThickness = iridescenceThicknessMaximum;
	#endif
#endif
#ifdef USE_SHEEN
	material.sheenColor = sheenColor;
	#ifdef USE_SHEEN_COLORMAP
		material.sheenColor *= texture2D( sheenColorMap, vSheenColorMapUv ).rgb;
	#endif
	material.sheenRoughness = clamp( sheenRoughness, 0.0001, 1.0 );
	#ifdef USE_SHEEN_ROUGHNESSMAP
		material.sheenRoughness *= texture2D( sheenRoughnessMap, vSheenRoughnessMapUv ).a;
	#endif
#endif
#ifdef USE_ANISOTROPY
	#ifdef USE_ANISOTROPYMAP
		mat2 anisotropyMat = mat2( anisotropyVector.x, anisotropyVector.y, - anisotropyVector.y, anisotropyVector.x );
		vec3 anisotropyPolar = texture2D( anisotropyMap, vAnisotropyMapUv ).rgb;
		vec2 anisotropyV = anisotropyMat * normalize( 2.0 * anisotropyPolar.rg - vec2( 1.0 ) ) * anisotropyPolar.b;
	#else
		vec2 anisotropyV = anisotropyVector;
	#endif
	material.anisotropy = length( anisotropyV );
	if( material.anisotropy == 0.0 ) {
		anisotropyV = vec2( 1.0, 0.0 );
	} else {
		anisotropyV /= material.anisotropy;
		material.anisotropy = saturate( material.anisotropy );
	}
	material.alphaT = mix( pow2( material.roughness ), 1.0, pow2( material.anisotropy ) );
	material.anisotropyT = tbn[ 0 ] * anisotropyV.x + tbn[ 1 ] * anisotropyV.y;
	material.anisotropyB = tbn[ 1 ] * anisotropyV.x - tbn[ 0 ] * anisotropyV.y;
#endif`,Db=`uniform sampler2D dfgLUT;
struct PhysicalMaterial {
	vec3 diffuseColor;
	vec3 diffuseContribution;
	vec3 specularColor;
	vec3 specularColorBlended;
	float roughness;
	float metalness;
	float specularF90;
	float dispersion;
	vec2 dfg;
	vec3 multiScatteringCompensation;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float diffuseRoughness;
	#endif
	#ifdef USE_RETROREFLECTION
		float retroreflectivity;
	#endif
	#ifdef USE_CLEARCOAT
		float clearcoat;
		float clearcoatRoughness;
		vec3 clearcoatF0;
		float clearcoatF90;
	#endif
	#ifdef USE_IRIDESCENCE
		float iridescence;
		float iridescenceIOR;
		float iridescenceThickness;
		vec3 iridescenceFresnel;
		vec3 iridescenceF0Dielectric;
		vec3 iridescenceF0Metallic;
	#endif
	#ifdef USE_SHEEN
		vec3 sheenColor;
		float sheenRoughness;
	#endif
	#ifdef IOR
		float ior;
	#endif
	#ifdef USE_TRANSMISSION
		float transmission;
		float transmissionAlpha;
		float thickness;
		float attenuationDistance;
		vec3 attenuationColor;
	#endif
	#ifdef USE_ANISOTROPY
		float anisotropy;
		float alphaT;
		vec3 anisotropyT;
		vec3 anisotropyB;
	#endif
};
vec3 clearcoatSpecularDirect = vec3( 0.0 );
vec3 clearcoatSpecularIndirect = vec3( 0.0 );
vec3 sheenSpecularDirect = vec3( 0.0 );
vec3 sheenSpecularIndirect = vec3(0.0 );
vec3 Schlick_to_F0( const in vec3 f, const in float f90, const in float dotVH ) {
    float x = clamp( 1.0 - dotVH, 0.0, 1.0 );
    float x2 = x * x;
    float x5 = clamp( x * x2 * x2, 0.0, 0.9999 );
    return ( f - vec3( f90 ) * x5 ) / ( 1.0 - x5 );
}
#ifdef USE_DIFFUSE_ROUGHNESS
	const float EON_EPSILON = 1e-7;
	float FON_DirectionalAlbedo( const in float mu, const in float roughness, const in float A ) {
		float muComp = 1.0 - mu;
		float gOverPi = muComp * ( 0.0571085289 + muComp * ( 0.491881867 + muComp * ( - 0.332181442 + muComp * 0.0714429953 ) ) );
		return A * ( 1.0 + roughness * gOverPi );
	}
	vec3 BRDF_EON( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in vec3 diffuseColor, const in float roughness ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return BRDF_Lambert( rho );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float s = dot( lightDir, viewDir ) - dotNL * dotNV;
		float sOverT = ( s > 0.0 ) ? s / max( max( dotNL, dotNV ), EON_EPSILON ) : s;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		vec3 singleScatter = rho * RECIPROCAL_PI * A * ( 1.0 + roughness * sOverT );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		float albedoV = FON_DirectionalAlbedo( dotNV, roughness, A );
		float albedoL = FON_DirectionalAlbedo( dotNL, roughness, A );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		vec3 multiScatter = rhoMultiScatter * RECIPROCAL_PI
			* max( EON_EPSILON, 1.0 - albedoV )
			* max( EON_EPSILON, 1.0 - albedoL )
			/ max( EON_EPSILON, 1.0 - averageAlbedo );
		return singleScatter + multiScatter;
	}
	vec3 EON_DirectionalAlbedo( const in vec3 diffuseColor, const in float roughness, const in float dotNV ) {
		vec3 rho = saturate( diffuseColor );
		if ( roughness <= EON_EPSILON ) return rho;
		float A = 1.0 / ( 1.0 + ( 0.5 - 2.0 / ( 3.0 * PI ) ) * roughness );
		float directionalAlbedo = FON_DirectionalAlbedo( dotNV, roughness, A );
		float averageAlbedo = A * ( 1.0 + ( 2.0 / 3.0 - 28.0 / ( 15.0 * PI ) ) * roughness );
		vec3 rhoMultiScatter = rho * rho * averageAlbedo / max( vec3( EON_EPSILON ), vec3( 1.0 ) - rho * ( 1.0 - averageAlbedo ) );
		return rho * directionalAlbedo + rhoMultiScatter * ( 1.0 - directionalAlbedo );
	}
#endif
float V_GGX_SmithCorrelated( const in float alpha, const in float dotNL, const in float dotNV ) {
	float a2 = pow2( alpha );
	float gv = dotNL * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNV ) );
	float gl = dotNV * sqrt( a2 + ( 1.0 - a2 ) * pow2( dotNL ) );
	return 0.5 / max( gv + gl, EPSILON );
}
float D_GGX( const in float alpha, const in float dotNH ) {
	float a2 = pow2( alpha );
	float denom = pow2( dotNH ) * ( a2 - 1.0 ) + 1.0;
	return RECIPROCAL_PI * a2 / pow2( denom );
}
#ifdef USE_ANISOTROPY
	float V_GGX_SmithCorrelated_Anisotropic( const in float alphaT, const in float alphaB, const in float dotTV, const in float dotBV, const in float dotTL, const in float dotBL, const in float dotNV, const in float dotNL ) {
		float gv = dotNL * length( vec3( alphaT * dotTV, alphaB * dotBV, dotNV ) );
		float gl = dotNV * length( vec3( alphaT * dotTL, alphaB * dotBL, dotNL ) );
		return 0.5 / max( gv + gl, EPSILON );
	}
	float D_GGX_Anisotropic( const in float alphaT, const in float alphaB, const in float dotNH, const in float dotTH, const in float dotBH ) {
		float a2 = alphaT * alphaB;
		highp vec3 v = vec3( alphaB * dotTH, alphaT * dotBH, a2 * dotNH );
		highp float v2 = dot( v, v );
		float w2 = a2 / v2;
		return RECIPROCAL_PI * a2 * pow2 ( w2 );
	}
#endif
#ifdef USE_CLEARCOAT
	vec3 BRDF_GGX_Clearcoat( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material) {
		vec3 f0 = material.clearcoatF0;
		float f90 = material.clearcoatF90;
		float roughness = max( material.clearcoatRoughness, 0.045 );
		float alpha = pow2( roughness );
		vec3 halfDir = normalize( lightDir + viewDir );
		float dotNL = saturate( dot( normal, lightDir ) );
		float dotNV = saturate( dot( normal, viewDir ) );
		float dotNH = saturate( dot( normal, halfDir ) );
		float dotVH = saturate( dot( viewDir, halfDir ) );
		vec3 F = F_Schlick( f0, f90, dotVH );
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
		return F * ( V * D );
	}
#endif
vec3 BRDF_GGX( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, const in PhysicalMaterial material ) {
	vec3 f0 = material.specularColorBlended;
	float f90 = material.specularF90;
	float roughness = max( material.roughness, 0.045 );
	float alpha = pow2( roughness );
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float dotVH = saturate( dot( viewDir, halfDir ) );
	vec3 F = F_Schlick( f0, f90, dotVH );
	#ifdef USE_IRIDESCENCE
		F = mix( F, material.iridescenceFresnel, material.iridescence );
	#endif
	#ifdef USE_ANISOTROPY
		float dotTL = dot( material.anisotropyT, lightDir );
		float dotTV = dot( material.anisotropyT, viewDir );
		float dotTH = dot( material.anisotropyT, halfDir );
		float dotBL = dot( material.anisotropyB, lightDir );
		float dotBV = dot( material.anisotropyB, viewDir );
		float dotBH = dot( material.anisotropyB, halfDir );
		float alphaT = max( material.alphaT, alpha );
		float V = V_GGX_SmithCorrelated_Anisotropic( alphaT, alpha, dotTV, dotBV, dotTL, dotBL, dotNV, dotNL );
		float D = D_GGX_Anisotropic( alphaT, alpha, dotNH, dotTH, dotBH );
	#else
		float V = V_GGX_SmithCorrelated( alpha, dotNL, dotNV );
		float D = D_GGX( alpha, dotNH );
	#endif
	return F * ( V * D );
}
vec2 LTC_Uv( const in vec3 N, const in vec3 V, const in float roughness ) {
	const float LUT_SIZE = 64.0;
	const float LUT_SCALE = ( LUT_SIZE - 1.0 ) / LUT_SIZE;
	const float LUT_BIAS = 0.5 / LUT_SIZE;
	float dotNV = saturate( dot( N, V ) );
	vec2 uv = vec2( roughness, sqrt( 1.0 - dotNV ) );
	uv = uv * LUT_SCALE + LUT_BIAS;
	return uv;
}
float LTC_ClippedSphereFormFactor( const in vec3 f ) {
	float l = length( f );
	return max( ( l * l + f.z ) / ( l + 1.0 ), 0.0 );
}
vec3 LTC_EdgeVectorFormFactor( const in vec3 v1, const in vec3 v2 ) {
	float x = dot( v1, v2 );
	float y = abs( x );
	float a = 0.8543985 + ( 0.4965155 + 0.0145206 * y ) * y;
	float b = 3.4175940 + ( 4.1616724 + y ) * y;
	float v = a / b;
	float theta_sintheta = ( x > 0.0 ) ? v : 0.5 * inversesqrt( max( 1.0 - x * x, 1e-7 ) ) - v;
	return cross( v1, v2 ) * theta_sintheta;
}
vec3 LTC_Evaluate( const in vec3 N, const in vec3 V, const in vec3 P, const in mat3 mInv, const in vec3 rectCoords[ 4 ] ) {
	vec3 v1 = rectCoords[ 1 ] - rectCoords[ 0 ];
	vec3 v2 = rectCoords[ 3 ] - rectCoords[ 0 ];
	vec3 lightNormal = cross( v1, v2 );
	if( dot( lightNormal, P - rectCoords[ 0 ] ) < 0.0 ) return vec3( 0.0 );
	vec3 T1, T2;
	T1 = normalize( V - N * dot( V, N ) );
	T2 = - cross( N, T1 );
	mat3 mat = mInv * transpose( mat3( T1, T2, N ) );
	vec3 coords[ 4 ];
	coords[ 0 ] = mat * ( rectCoords[ 0 ] - P );
	coords[ 1 ] = mat * ( rectCoords[ 1 ] - P );
	coords[ 2 ] = mat * ( rectCoords[ 2 ] - P );
	coords[ 3 ] = mat * ( rectCoords[ 3 ] - P );
	coords[ 0 ] = normalize( coords[ 0 ] );
	coords[ 1 ] = normalize( coords[ 1 ] );
	coords[ 2 ] = normalize( coords[ 2 ] );
	coords[ 3 ] = normalize( coords[ 3 ] );
	vec3 vectorFormFactor = vec3( 0.0 );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 0 ], coords[ 1 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 1 ], coords[ 2 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 2 ], coords[ 3 ] );
	vectorFormFactor += LTC_EdgeVectorFormFactor( coords[ 3 ], coords[ 0 ] );
	float result = LTC_ClippedSphereFormFactor( vectorFormFactor );
	return vec3( result );
}
#if defined( USE_SHEEN )
float D_Charlie( float roughness, float dotNH ) {
	float alpha = pow2( roughness );
	float invAlpha = 1.0 / alpha;
	float cos2h = dotNH * dotNH;
	float sin2h = max( 1.0 - cos2h, 0.0078125 );
	return ( 2.0 + invAlpha ) * pow( sin2h, invAlpha * 0.5 ) / ( 2.0 * PI );
}
float V_Neubelt( float dotNV, float dotNL ) {
	return saturate( 1.0 / ( 4.0 * ( dotNL + dotNV - dotNL * dotNV ) ) );
}
vec3 BRDF_Sheen( const in vec3 lightDir, const in vec3 viewDir, const in vec3 normal, vec3 sheenColor, const in float sheenRoughness ) {
	vec3 halfDir = normalize( lightDir + viewDir );
	float dotNL = saturate( dot( normal, lightDir ) );
	float dotNV = saturate( dot( normal, viewDir ) );
	float dotNH = saturate( dot( normal, halfDir ) );
	float D = D_Charlie( sheenRoughness, dotNH );
	float V = V_Neubelt( dotNV, dotNL );
	return sheenColor * ( D * V );
}
#endif
float IBLSheenBRDF( const in vec3 normal, const in vec3 viewDir, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	float r2 = roughness * roughness;
	float rInv = 1.0 / ( roughness + 0.1 );
	float a = -1.9362 + 1.0678 * roughness + 0.4573 * r2 - 0.8469 * rInv;
	float b = -0.6014 + 0.5538 * roughness - 0.4670 * r2 - 0.1255 * rInv;
	float DG = exp( a * dotNV + b );
	return saturate( DG );
}
vec3 EnvironmentBRDF( const in vec3 normal, const in vec3 viewDir, const in vec3 specularColor, const in float specularF90, const in float roughness ) {
	float dotNV = saturate( dot( normal, viewDir ) );
	vec2 fab = texture2D( dfgLUT, vec2( roughness, dotNV ) ).rg;
	return specularColor * fab.x + specularF90 * fab.y;
}
#ifdef USE_IRIDESCENCE
void computeMultiscatteringIridescence( const in vec2 fab, const in vec3 specularColor, const in float specularF90, const in float iridescence, const in vec3 iridescenceF0, inout vec3 singleScatter, inout vec3 multiScatter ) {
#else
void computeMultiscattering( const in vec2 fab, const in vec3 specularColor, const in float specularF90, inout vec3 singleScatter, inout vec3 multiScatter ) {
#endif
	#ifdef USE_IRIDESCENCE
		vec3 Fr = mix( specularColor, iridescenceF0, iridescence );
	#else
		vec3 Fr = specularColor;
	#endif
	vec3 FssEss = Fr * fab.x + specularF90 * fab.y;
	float Ess = fab.x + fab.y;
	float Ems = 1.0 - Ess;
	vec3 Favg = Fr + ( 1.0 - Fr ) * 0.047619;	vec3 Fms = FssEss * Favg / ( 1.0 - Ems * Favg );
	singleScatter += FssEss;
	multiScatter += Fms * Ems;
}
#if NUM_RECT_AREA_LIGHTS > 0
	void RE_Direct_RectArea_Physical( const in RectAreaLight rectAreaLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
		vec3 normal = geometryNormal;
		vec3 viewDir = geometryViewDir;
		vec3 position = geometryPosition;
		vec3 lightPos = rectAreaLight.position;
		vec3 halfWidth = rectAreaLight.halfWidth;
		vec3 halfHeight = rectAreaLight.halfHeight;
		vec3 lightColor = rectAreaLight.color;
		float roughness = material.roughness;
		vec3 rectCoords[ 4 ];
		rectCoords[ 0 ] = lightPos + halfWidth - halfHeight;		rectCoords[ 1 ] = lightPos - halfWidth - halfHeight;
		rectCoords[ 2 ] = lightPos - halfWidth + halfHeight;
		rectCoords[ 3 ] = lightPos + halfWidth + halfHeight;
		vec2 uv = LTC_Uv( normal, viewDir, roughness );
		vec4 t1 = texture2D( ltc_1, uv );
		vec4 t2 = texture2D( ltc_2, uv );
		mat3 mInv = mat3(
			vec3( t1.x, 0, t1.y ),
			vec3(    0, 1,    0 ),
			vec3( t1.z, 0, t1.w )
		);
		vec3 fresnel = ( material.specularColorBlended * t2.x + ( material.specularF90 - material.specularColorBlended ) * t2.y );
		reflectedLight.directSpecular += lightColor * fresnel * LTC_Evaluate( normal, viewDir, position, mInv, rectCoords );
		reflectedLight.directDiffuse += lightColor * material.diffuseContribution * LTC_Evaluate( normal, viewDir, position, mat3( 1.0 ), rectCoords );
		#ifdef USE_CLEARCOAT
			vec3 Ncc = geometryClearcoatNormal;
			vec2 uvClearcoat = LTC_Uv( Ncc, viewDir, material.clearcoatRoughness );
			vec4 t1Clearcoat = texture2D( ltc_1, uvClearcoat );
			vec4 t2Clearcoat = texture2D( ltc_2, uvClearcoat );
			mat3 mInvClearcoat = mat3(
				vec3( t1Clearcoat.x, 0, t1Clearcoat.y ),
				vec3(             0, 1,             0 ),
				vec3( t1Clearcoat.z, 0, t1Clearcoat.w )
			);
			vec3 fresnelClearcoat = material.clearcoatF0 * t2Clearcoat.x + ( material.clearcoatF90 - material.clearcoatF0 ) * t2Clearcoat.y;
			clearcoatSpecularDirect += lightColor * fresnelClearcoat * LTC_Evaluate( Ncc, viewDir, position, mInvClearcoat, rectCoords );
		#endif
	}
#endif
void RE_Direct_Physical( const in IncidentLight directLight, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	float dotNL = saturate( dot( geometryNormal, directLight.direction ) );
	vec3 irradiance = dotNL * directLight.color;
	#ifdef USE_CLEARCOAT
		float dotNLcc = saturate( dot( geometryClearcoatNormal, directLight.direction ) );
		vec3 ccIrradiance = dotNLcc * directLight.color;
		clearcoatSpecularDirect += ccIrradiance * BRDF_GGX_Clearcoat( directLight.direction, geometryViewDir, geometryClearcoatNormal, material );
	#endif
	#ifdef USE_SHEEN
 
 		sheenSpecularDirect += irradiance * BRDF_Sheen( directLight.direction, geometryViewDir, geometryNormal, material.sheenColor, material.sheenRoughness );
 
 		float sheenAlbedoV = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
 		float sheenAlbedoL = IBLSheenBRDF( geometryNormal, directLight.direction, material.sheenRoughness );
 
 		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * max( sheenAlbedoV, sheenAlbedoL );
 
 		irradiance *= sheenEnergyComp;
 
 	#endif
	vec3 specularBRDF = BRDF_GGX( directLight.direction, geometryViewDir, geometryNormal, material );
	#ifdef USE_RETROREFLECTION
		vec3 retroViewDir = reflect( - geometryViewDir, geometryNormal );
		vec3 retroSpecularBRDF = BRDF_GGX( directLight.direction, retroViewDir, geometryNormal, material );
		specularBRDF = mix( specularBRDF, retroSpecularBRDF, saturate( material.retroreflectivity ) );
	#endif
	reflectedLight.directSpecular += irradiance * specularBRDF * material.multiScatteringCompensation;
	vec3 halfDir = normalize( directLight.direction + geometryViewDir );
	float dotVH = saturate( dot( geometryViewDir, halfDir ) );
	vec3 F = F_Schlick( material.specularColor, material.specularF90, dotVH );
	#ifdef USE_RETROREFLECTION
		vec3 retroHalfDir = normalize( directLight.direction + retroViewDir );
		float dotRetroVH = saturate( dot( retroViewDir, retroHalfDir ) );
		vec3 retroF = F_Schlick( material.specularColor, material.specularF90, dotRetroVH );
		F = mix( F, retroF, saturate( material.retroreflectivity ) );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		vec3 diffuseBRDF = BRDF_EON( directLight.direction, geometryViewDir, geometryNormal, material.diffuseColor, material.diffuseRoughness ) * ( 1.0 - material.metalness );
	#else
		vec3 diffuseBRDF = BRDF_Lambert( material.diffuseContribution );
	#endif
	reflectedLight.directDiffuse += irradiance * diffuseBRDF * ( 1.0 - F );
}
void RE_IndirectDiffuse_Physical( const in vec3 irradiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight ) {
	vec3 singleScattering = vec3( 0.0 );
	vec3 multiScattering = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScattering, multiScattering );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScattering, multiScattering );
	#endif
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuseAlbedo = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness );
		vec3 diffuse = irradiance * RECIPROCAL_PI * diffuseAlbedo * ( 1.0 - singleScattering - multiScattering );
	#else
		vec3 diffuse = irradiance * BRDF_Lambert( material.diffuseContribution ) * ( 1.0 - singleScattering - multiScattering );
	#endif
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		sheenSpecularIndirect += irradiance * material.sheenColor * sheenAlbedo * RECIPROCAL_PI;
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		diffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectDiffuse += diffuse;
}
void RE_IndirectSpecular_Physical( const in vec3 radiance, const in vec3 irradiance, const in vec3 clearcoatRadiance, const in vec3 geometryPosition, const in vec3 geometryNormal, const in vec3 geometryViewDir, const in vec3 geometryClearcoatNormal, const in PhysicalMaterial material, inout ReflectedLight reflectedLight) {
	#ifdef USE_CLEARCOAT
		clearcoatSpecularIndirect += clearcoatRadiance * EnvironmentBRDF( geometryClearcoatNormal, geometryViewDir, material.clearcoatF0, material.clearcoatF90, material.clearcoatRoughness );
	#endif
	#ifdef USE_SHEEN
		sheenSpecularIndirect += irradiance * material.sheenColor * IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness ) * RECIPROCAL_PI;
 	#endif
	vec3 singleScatteringDielectric = vec3( 0.0 );
	vec3 multiScatteringDielectric = vec3( 0.0 );
	vec3 singleScatteringMetallic = vec3( 0.0 );
	vec3 multiScatteringMetallic = vec3( 0.0 );
	#ifdef USE_IRIDESCENCE
		computeMultiscatteringIridescence( material.dfg, material.specularColor, material.specularF90, material.iridescence, material.iridescenceF0Dielectric, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscatteringIridescence( material.dfg, material.diffuseColor, material.specularF90, material.iridescence, material.iridescenceF0Metallic, singleScatteringMetallic, multiScatteringMetallic );
	#else
		computeMultiscattering( material.dfg, material.specularColor, material.specularF90, singleScatteringDielectric, multiScatteringDielectric );
		computeMultiscattering( material.dfg, material.diffuseColor, material.specularF90, singleScatteringMetallic, multiScatteringMetallic );
	#endif
	vec3 singleScattering = mix( singleScatteringDielectric, singleScatteringMetallic, material.metalness );
	vec3 multiScattering = mix( multiScatteringDielectric, multiScatteringMetallic, material.metalness );
	vec3 totalScatteringDielectric = singleScatteringDielectric + multiScatteringDielectric;
	#ifdef USE_DIFFUSE_ROUGHNESS
		float dotNV = saturate( dot( geometryNormal, geometryViewDir ) );
		vec3 diffuse = EON_DirectionalAlbedo( material.diffuseColor, material.diffuseRoughness, dotNV ) * ( 1.0 - material.metalness ) * ( 1.0 - totalScatteringDielectric );
	#else
		vec3 diffuse = material.diffuseContribution * ( 1.0 - totalScatteringDielectric );
	#endif
	vec3 cosineWeightedIrradiance = irradiance * RECIPROCAL_PI;
	vec3 indirectSpecular = radiance * singleScattering;
	indirectSpecular += multiScattering * cosineWeightedIrradiance;
	vec3 indirectDiffuse = diffuse * cosineWeightedIrradiance;
	#ifdef USE_SHEEN
		float sheenAlbedo = IBLSheenBRDF( geometryNormal, geometryViewDir, material.sheenRoughness );
		float sheenEnergyComp = 1.0 - max3( material.sheenColor ) * sheenAlbedo;
		indirectSpecular *= sheenEnergyComp;
		indirectDiffuse *= sheenEnergyComp;
	#endif
	reflectedLight.indirectSpecular += indirectSpecular;
	reflectedLight.indirectDiffuse += indirectDiffuse;
}
#define RE_Direct				RE_Direct_Physical
#define RE_Direct_RectArea		RE_Direct_RectArea_Physical
#define RE_IndirectDiffuse		RE_IndirectDiffuse_Physical
#define RE_IndirectSpecular		RE_IndirectSpecular_Physical
float computeSpecularOcclusion( const in float dotNV, const in float ambientOcclusion, const in float roughness ) {
	return saturate( pow( dotNV + ambientOcclusion, exp2( - 16.0 * roughness - 1.0 ) ) - 1.0 + ambientOcclusion );
}`,Lb=`
vec3 geometryPosition = - vViewPosition;
vec3 geometryNormal = normal;
vec3 geometryViewDir = ( isOrthographic ) ? vec3( 0, 0, 1 ) : normalize( vViewPosition );
vec3 geometryClearcoatNormal = vec3( 0.0 );
#ifdef USE_CLEARCOAT
	geometryClearcoatNormal = clearcoatNormal;
#endif
#ifdef USE_IRIDESCENCE
	float dotNVi = saturate( dot( normal, geometryViewDir ) );
	if ( material.iridescenceThickness == 0.0 ) {
		material.iridescence = 0.0;
	} else {
		material.iridescence = saturate( material.iridescence );
	}
	if ( material.iridescence > 0.0 ) {
		vec3 iridescenceFresnelDielectric = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.specularColor );
		vec3 iridescenceFresnelMetallic = evalIridescence( 1.0, material.iridescenceIOR, dotNVi, material.iridescenceThickness, material.diffuseColor );
		material.iridescenceFresnel = mix( iridescenceFresnelDielectric, iridescenceFresnelMetallic, material.metalness );
		material.iridescenceF0Dielectric = Schlick_to_F0( iridescenceFresnelDielectric, 1.0, dotNVi );
		material.iridescenceF0Metallic = Schlick_to_F0( iridescenceFresnelMetallic, 1.0, dotNVi );
	}
#endif
#ifdef STANDARD
	float dotNVms = saturate( dot( geometryNormal, geometryViewDir ) );
	material.dfg = texture2D( dfgLUT, vec2( material.roughness, dotNVms ) ).rg;
	#if ( NUM_SUN_LIGHTS > 0 || NUM_DIR_LIGHTS > 0 || NUM_POINT_LIGHTS > 0 || NUM_SPOT_LIGHTS > 0 )
		float EssMs = material.dfg.x + material.dfg.y;
		material.multiScatteringCompensation = 1.0 + material.specularColorBlended * ( 1.0 / EssMs - 1.0 );
	#endif
#endif
IncidentLight directLight;
#if ( NUM_POINT_LIGHTS > 0 ) && defined( RE_Direct )
	PointLight pointLight;
	#if defined( USE_SHADOWMAP ) && NUM_POINT_LIGHT_SHADOWS > 0
	PointLightShadow pointLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHTS; i ++ ) {
		pointLight = pointLights[ i ];
		getPointLightInfo( pointLight, geometryPosition, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_POINT_LIGHT_SHADOWS ) && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
		pointLightShadow = pointLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getPointShadow( pointShadowMap[ i ], pointLightShadow.shadowMapSize, pointLightShadow.shadowIntensity, pointLightShadow.shadowBias, pointLightShadow.shadowRadius, vPointShadowCoord[ i ], pointLightShadow.shadowCameraNear, pointLightShadow.shadowCameraFar ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SPOT_LIGHTS > 0 ) && defined( RE_Direct )
	SpotLight spotLight;
	vec4 spotColor;
	vec3 spotLightCoord;
	bool inSpotLightMap;
	#if defined( USE_SHADOWMAP ) && NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHTS; i ++ ) {
		spotLight = spotLights[ i ];
		getSpotLightInfo( spotLight, geometryPosition, directLight );
		#if ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#define SPOT_LIGHT_MAP_INDEX UNROLLED_LOOP_INDEX
		#elif ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		#define SPOT_LIGHT_MAP_INDEX NUM_SPOT_LIGHT_MAPS
		#else
		#define SPOT_LIGHT_MAP_INDEX ( UNROLLED_LOOP_INDEX - NUM_SPOT_LIGHT_SHADOWS + NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS )
		#endif
		#if ( SPOT_LIGHT_MAP_INDEX < NUM_SPOT_LIGHT_MAPS )
			spotLightCoord = vSpotLightCoord[ i ].xyz / vSpotLightCoord[ i ].w;
			inSpotLightMap = all( lessThan( abs( spotLightCoord * 2. - 1. ), vec3( 1.0 ) ) );
			spotColor = texture2D( spotLightMap[ SPOT_LIGHT_MAP_INDEX ], spotLightCoord.xy );
			directLight.color = inSpotLightMap ? directLight.color * spotColor.rgb : directLight.color;
		#endif
		#undef SPOT_LIGHT_MAP_INDEX
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
		spotLightShadow = spotLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( spotShadowMap[ i ], spotLightShadow.shadowMapSize, spotLightShadow.shadowIntensity, spotLightShadow.shadowBias, spotLightShadow.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_SUN_LIGHTS > 0 ) && defined( RE_Direct )
	SunLight sunLight;
	#if defined( USE_SHADOWMAP ) && NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHTS; i ++ ) {
		sunLight = sunLights[ i ];
		getSunLightInfo( sunLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_SUN_LIGHT_SHADOWS )
		sunLightShadow = sunLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getSunShadow( sunShadowMap[ i ], sunLightShadow, UNROLLED_LOOP_INDEX ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_DIR_LIGHTS > 0 ) && defined( RE_Direct )
	DirectionalLight directionalLight;
	#if defined( USE_SHADOWMAP ) && NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLightShadow;
	#endif
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHTS; i ++ ) {
		directionalLight = directionalLights[ i ];
		getDirectionalLightInfo( directionalLight, directLight );
		#if defined( USE_SHADOWMAP ) && ( UNROLLED_LOOP_INDEX < NUM_DIR_LIGHT_SHADOWS )
		directionalLightShadow = directionalLightShadows[ i ];
		directLight.color *= ( directLight.visible && receiveShadow ) ? getShadow( directionalShadowMap[ i ], directionalLightShadow.shadowMapSize, directionalLightShadow.shadowIntensity, directionalLightShadow.shadowBias, directionalLightShadow.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
		#endif
		RE_Direct( directLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if ( NUM_RECT_AREA_LIGHTS > 0 ) && defined( RE_Direct_RectArea )
	RectAreaLight rectAreaLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_RECT_AREA_LIGHTS; i ++ ) {
		rectAreaLight = rectAreaLights[ i ];
		RE_Direct_RectArea( rectAreaLight, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
	}
	#pragma unroll_loop_end
#endif
#if defined( RE_IndirectDiffuse )
	vec3 iblIrradiance = vec3( 0.0 );
	vec3 irradiance = getAmbientLightIrradiance( ambientLightColor );
	#if defined( USE_LIGHT_PROBES )
		irradiance += getLightProbeIrradiance( lightProbe, geometryNormal );
	#endif
	#if ( NUM_HEMI_LIGHTS > 0 )
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_HEMI_LIGHTS; i ++ ) {
			irradiance += getHemisphereLightIrradiance( hemisphereLights[ i ], geometryNormal );
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_LIGHT_PROBE_GRIDS > 0
		vec3 probeWorldPos = ( ( vec4( geometryPosition, 1.0 ) - viewMatrix[ 3 ] ) * viewMatrix ).xyz;
		vec3 probeWorldNormal = transformNormalByInverseViewMatrix( geometryNormal, viewMatrix );
		int probeGrid = - 1;
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( isInsideLightProbeGrid( probeWorldPos, probeWorldNormal, probesMin[ i ], probesMax[ i ], probesResolution[ i ] ) ) probeGrid = UNROLLED_LOOP_INDEX;
		}
		#pragma unroll_loop_end
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_LIGHT_PROBE_GRIDS; i ++ ) {
			if ( probeGrid == UNROLLED_LOOP_INDEX ) irradiance += getLightProbeGridIrradiance( probesSH[ i ], probesMin[ i ], probesMax[ i ], probesResolution[ i ], probeWorldPos, probeWorldNormal );
		}
		#pragma unroll_loop_end
	#endif
#endif
#if defined( RE_IndirectSpecular )
	vec3 radiance = vec3( 0.0 );
	vec3 clearcoatRadiance = vec3( 0.0 );
#endif`,Nb=`#if defined( RE_IndirectDiffuse )
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		vec3 lightMapIrradiance = lightMapTexel.rgb * lightMapIntensity;
		irradiance += lightMapIrradiance;
	#endif
	#if defined( USE_ENVMAP ) && defined( ENVMAP_TYPE_PMREM )
		#if defined( STANDARD ) || defined( LAMBERT ) || defined( PHONG )
			iblIrradiance += getIBLIrradiance( geometryNormal );
		#endif
	#endif
#endif
#if defined( USE_ENVMAP ) && defined( RE_IndirectSpecular )
	#ifdef USE_ANISOTROPY
		vec3 iblRadiance = getIBLAnisotropyRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
	#else
		vec3 iblRadiance = getIBLRadiance( geometryViewDir, geometryNormal, material.roughness );
	#endif
	#ifdef USE_RETROREFLECTION
		#ifdef USE_ANISOTROPY
			vec3 retroIBLRadiance = getIBLAnisotropyRetroRadiance( geometryViewDir, geometryNormal, material.roughness, material.anisotropyB, material.anisotropy );
		#else
			vec3 retroIBLRadiance = getIBLRetroRadiance( geometryViewDir, geometryNormal, material.roughness );
		#endif
		iblRadiance = mix( iblRadiance, retroIBLRadiance, saturate( material.retroreflectivity ) );
	#endif
	radiance += iblRadiance;
	#ifdef USE_CLEARCOAT
		clearcoatRadiance += getIBLRadiance( geometryViewDir, geometryClearcoatNormal, material.clearcoatRoughness );
	#endif
#endif`,Ub=`#if defined( RE_IndirectDiffuse )
	#if defined( LAMBERT ) || defined( PHONG )
		irradiance += iblIrradiance;
	#endif
	RE_IndirectDiffuse( irradiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif
#if defined( RE_IndirectSpecular )
	RE_IndirectSpecular( radiance, iblIrradiance, clearcoatRadiance, geometryPosition, geometryNormal, geometryViewDir, geometryClearcoatNormal, material, reflectedLight );
#endif`,Fb=`#if NUM_LIGHT_PROBE_GRIDS > 0
uniform highp sampler3D probesSH[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMin[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesMax[ NUM_LIGHT_PROBE_GRIDS ];
uniform vec3 probesResolution[ NUM_LIGHT_PROBE_GRIDS ];
bool isInsideLightProbeGrid( vec3 worldPos, vec3 worldNormal, vec3 probesMin, vec3 probesMax, vec3 probesResolution ) {
	vec3 spacing = ( probesMax - probesMin ) / probesResolution;
	vec3 samplePos = worldPos + worldNormal * spacing * 0.5;
	vec3 margin = spacing * 0.01;
	return all( greaterThanEqual( samplePos, probesMin - margin ) ) && all( lessThanEqual( samplePos, probesMax + margin ) );
}
vec3 getLightProbeGridIrradiance( highp sampler3D probesSH, vec3 probesMin, vec3 probesMax, vec3 probesResolution, vec3 worldPos, vec3 worldNormal ) {
	vec3 res = probesResolution;
	vec3 gridRange = probesMax - probesMin;
	vec3 probeSpacing = gridRange / res;
	vec3 samplePos = worldPos + worldNormal * probeSpacing * 0.5;
	vec3 uvw = clamp( ( samplePos - probesMin ) / gridRange, 0.5 / res, 1.0 - 0.5 / res );
	float nz          = res.z;
	float paddedSlices = nz + 2.0;
	float atlasDepth  = 7.0 * paddedSlices;
	float uvZBase     = uvw.z * nz + 1.0;
	vec4 s0 = texture( probesSH, vec3( uvw.xy, ( uvZBase                       ) / atlasDepth ) );
	vec4 s1 = texture( probesSH, vec3( uvw.xy, ( uvZBase +       paddedSlices   ) / atlasDepth ) );
	vec4 s2 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 2.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s3 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 3.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s4 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 4.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s5 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 5.0 * paddedSlices   ) / atlasDepth ) );
	vec4 s6 = texture( probesSH, vec3( uvw.xy, ( uvZBase + 6.0 * paddedSlices   ) / atlasDepth ) );
	vec3 c0 = s0.xyz;
	vec3 c1 = vec3( s0.w, s1.xy );
	vec3 c2 = vec3( s1.zw, s2.x );
	vec3 c3 = s2.yzw;
	vec3 c4 = s3.xyz;
	vec3 c5 = vec3( s3.w, s4.xy );
	vec3 c6 = vec3( s4.zw, s5.x );
	vec3 c7 = s5.yzw;
	vec3 c8 = s6.xyz;
	float x = worldNormal.x, y = worldNormal.y, z = worldNormal.z;
	vec3 result = c0 * 0.886227;
	result += c1 * 2.0 * 0.511664 * y;
	result += c2 * 2.0 * 0.511664 * z;
	result += c3 * 2.0 * 0.511664 * x;
	result += c4 * 2.0 * 0.429043 * x * y;
	result += c5 * 2.0 * 0.429043 * y * z;
	result += c6 * ( 0.743125 * z * z - 0.247708 );
	result += c7 * 2.0 * 0.429043 * x * z;
	result += c8 * 0.429043 * ( x * x - y * y );
	return max( result, vec3( 0.0 ) );
}
#endif`,Ob=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	gl_FragDepth = vIsPerspective == 0.0 ? gl_FragCoord.z : log2( vFragDepth ) * logDepthBufFC * 0.5;
#endif`,kb=`#if defined( USE_LOGARITHMIC_DEPTH_BUFFER )
	uniform float logDepthBufFC;
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,Bb=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	varying float vFragDepth;
	varying float vIsPerspective;
#endif`,zb=`#ifdef USE_LOGARITHMIC_DEPTH_BUFFER
	vFragDepth = 1.0 + gl_Position.w;
	vIsPerspective = float( isPerspectiveMatrix( projectionMatrix ) );
#endif`,Vb=`#ifdef USE_MAP
	vec4 sampledDiffuseColor = texture2D( map, vMapUv );
	#ifdef DECODE_VIDEO_TEXTURE
		sampledDiffuseColor = sRGBTransferEOTF( sampledDiffuseColor );
	#endif
	diffuseColor *= sampledDiffuseColor;
#endif`,Gb=`#ifdef USE_MAP
	uniform sampler2D map;
#endif`,Hb=`#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
	#if defined( USE_POINTS_UV )
		vec2 uv = vUv;
	#else
		vec2 uv = ( uvTransform * vec3( gl_PointCoord.x, 1.0 - gl_PointCoord.y, 1 ) ).xy;
	#endif
#endif
#ifdef USE_MAP
	diffuseColor *= texture2D( map, uv );
#endif
#ifdef USE_ALPHAMAP
	diffuseColor.a *= texture2D( alphaMap, uv ).g;
#endif`,Wb=`#if defined( USE_POINTS_UV )
	varying vec2 vUv;
#else
	#if defined( USE_MAP ) || defined( USE_ALPHAMAP )
		uniform mat3 uvTransform;
	#endif
#endif
#ifdef USE_MAP
	uniform sampler2D map;
#endif
#ifdef USE_ALPHAMAP
	uniform sampler2D alphaMap;
#endif`,Xb=`float metalnessFactor = metalness;
#ifdef USE_METALNESSMAP
	vec4 texelMetalness = texture2D( metalnessMap, vMetalnessMapUv );
	metalnessFactor *= texelMetalness.b;
#endif`,qb=`#ifdef USE_METALNESSMAP
	uniform sampler2D metalnessMap;
#endif`,$b=`#ifdef USE_INSTANCING_MORPH
	float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	float morphTargetBaseInfluence = texelFetch( morphTexture, ivec2( 0, gl_InstanceID ), 0 ).r;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		morphTargetInfluences[i] =  texelFetch( morphTexture, ivec2( i + 1, gl_InstanceID ), 0 ).r;
	}
#endif`,Yb=`#if defined( USE_MORPHCOLORS )
	#if defined( USE_COLOR_ALPHA )
		vColor *= morphTargetBaseInfluence;
	#elif defined( USE_COLOR )
		vColor.rgb *= morphTargetBaseInfluence;
	#endif
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		#if defined( USE_COLOR_ALPHA )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor += getMorph( gl_VertexID, i, 2 ) * morphTargetInfluences[ i ];
		#elif defined( USE_COLOR )
			if ( morphTargetInfluences[ i ] != 0.0 ) vColor.rgb += getMorph( gl_VertexID, i, 2 ).rgb * morphTargetInfluences[ i ];
		#endif
	}
#endif`,Zb=`#ifdef USE_MORPHNORMALS
	objectNormal *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) objectNormal += getMorph( gl_VertexID, i, 1 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,Jb=`#ifdef USE_MORPHTARGETS
	#ifndef USE_INSTANCING_MORPH
		uniform float morphTargetBaseInfluence;
		uniform float morphTargetInfluences[ MORPHTARGETS_COUNT ];
	#endif
	uniform sampler2DArray morphTargetsTexture;
	uniform ivec2 morphTargetsTextureSize;
	vec4 getMorph( const in int vertexIndex, const in int morphTargetIndex, const in int offset ) {
		int texelIndex = vertexIndex * MORPHTARGETS_TEXTURE_STRIDE + offset;
		int y = texelIndex / morphTargetsTextureSize.x;
		int x = texelIndex - y * morphTargetsTextureSize.x;
		ivec3 morphUV = ivec3( x, y, morphTargetIndex );
		return texelFetch( morphTargetsTexture, morphUV, 0 );
	}
#endif`,Kb=`#ifdef USE_MORPHTARGETS
	transformed *= morphTargetBaseInfluence;
	for ( int i = 0; i < MORPHTARGETS_COUNT; i ++ ) {
		if ( morphTargetInfluences[ i ] != 0.0 ) transformed += getMorph( gl_VertexID, i, 0 ).xyz * morphTargetInfluences[ i ];
	}
#endif`,jb=`float faceDirection = gl_FrontFacing ? 1.0 : - 1.0;
#ifdef FLAT_SHADED
	vec3 fdx = dFdx( vViewPosition );
	vec3 fdy = dFdy( vViewPosition );
	vec3 normal = normalize( cross( fdx, fdy ) );
#else
	vec3 normal = normalize( vNormal );
	#ifdef DOUBLE_SIDED
		normal *= faceDirection;
	#endif
#endif
#if defined( USE_NORMALMAP_TANGENTSPACE ) || defined( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY )
	#ifdef USE_TANGENT
		mat3 tbn = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn = getTangentFrame( - vViewPosition, normal,
		#if defined( USE_NORMALMAP )
			vNormalMapUv
		#elif defined( USE_CLEARCOAT_NORMALMAP )
			vClearcoatNormalMapUv
		#else
			vUv
		#endif
		);
	#endif
	#ifdef DOUBLE_SIDED
		tbn[0] *= faceDirection;
		tbn[1] *= faceDirection;
	#endif
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	#ifdef USE_TANGENT
		mat3 tbn2 = mat3( normalize( vTangent ), normalize( vBitangent ), normal );
	#else
		mat3 tbn2 = getTangentFrame( - vViewPosition, normal, vClearcoatNormalMapUv );
	#endif
	#ifdef DOUBLE_SIDED
		tbn2[0] *= faceDirection;
		tbn2[1] *= faceDirection;
	#endif
#endif
vec3 nonPerturbedNormal = normal;`,Qb=`#ifdef USE_NORMALMAP_OBJECTSPACE
	normal = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#ifdef FLIP_SIDED
		normal = - normal;
	#endif
	#ifdef DOUBLE_SIDED
		normal = normal * faceDirection;
	#endif
	normal = normalize( normalMatrix * normal );
#elif defined( USE_NORMALMAP_TANGENTSPACE )
	vec3 mapN = texture2D( normalMap, vNormalMapUv ).xyz * 2.0 - 1.0;
	#if defined( USE_PACKED_NORMALMAP )
		mapN = vec3( mapN.xy, sqrt( saturate( 1.0 - dot( mapN.xy, mapN.xy ) ) ) );
	#endif
	mapN.xy *= normalScale;
	normal = normalize( tbn * mapN );
#elif defined( USE_BUMPMAP )
	normal = perturbNormalArb( - vViewPosition, normal, dHdxy_fwd(), faceDirection );
#endif`,tM=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,eM=`#ifndef FLAT_SHADED
	varying vec3 vNormal;
	#ifdef USE_TANGENT
		varying vec3 vTangent;
		varying vec3 vBitangent;
	#endif
#endif`,nM=`#ifndef FLAT_SHADED
	vNormal = normalize( transformedNormal );
	#ifdef USE_TANGENT
		vTangent = normalize( transformedTangent );
		vBitangent = normalize( cross( vNormal, vTangent ) * tangent.w );
		#ifdef FLIP_SIDED
			vBitangent = - vBitangent;
		#endif
	#endif
#endif`,iM=`#ifdef USE_NORMALMAP
	uniform sampler2D normalMap;
	uniform vec2 normalScale;
#endif
#ifdef USE_NORMALMAP_OBJECTSPACE
	uniform mat3 normalMatrix;
#endif
#if ! defined ( USE_TANGENT ) && ( defined ( USE_NORMALMAP_TANGENTSPACE ) || defined ( USE_CLEARCOAT_NORMALMAP ) || defined( USE_ANISOTROPY ) )
	mat3 getTangentFrame( vec3 eye_pos, vec3 surf_norm, vec2 uv ) {
		vec3 q0 = dFdx( eye_pos.xyz );
		vec3 q1 = dFdy( eye_pos.xyz );
		vec2 st0 = dFdx( uv.st );
		vec2 st1 = dFdy( uv.st );
		vec3 N = surf_norm;
		vec3 q1perp = cross( q1, N );
		vec3 q0perp = cross( N, q0 );
		vec3 T = q1perp * st0.x + q0perp * st1.x;
		vec3 B = q1perp * st0.y + q0perp * st1.y;
		float det = max( dot( T, T ), dot( B, B ) );
		float scale = ( det == 0.0 ) ? 0.0 : inversesqrt( det );
		return mat3( T * scale, B * scale, N );
	}
#endif`,sM=`#ifdef USE_CLEARCOAT
	vec3 clearcoatNormal = nonPerturbedNormal;
#endif`,rM=`#ifdef USE_CLEARCOAT_NORMALMAP
	vec3 clearcoatMapN = texture2D( clearcoatNormalMap, vClearcoatNormalMapUv ).xyz * 2.0 - 1.0;
	clearcoatMapN.xy *= clearcoatNormalScale;
	clearcoatNormal = normalize( tbn2 * clearcoatMapN );
#endif`,oM=`#ifdef USE_CLEARCOATMAP
	uniform sampler2D clearcoatMap;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform sampler2D clearcoatNormalMap;
	uniform vec2 clearcoatNormalScale;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform sampler2D clearcoatRoughnessMap;
#endif`,aM=`#ifdef USE_IRIDESCENCEMAP
	uniform sampler2D iridescenceMap;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform sampler2D iridescenceThicknessMap;
#endif`,lM=`#ifdef OPAQUE
diffuseColor.a = 1.0;
#endif
#ifdef USE_TRANSMISSION
diffuseColor.a *= material.transmissionAlpha;
#endif
gl_FragColor = vec4( outgoingLight, diffuseColor.a );`,cM=`vec3 packNormalToRGB( const in vec3 normal ) {
	return normalize( normal ) * 0.5 + 0.5;
}
vec3 unpackRGBToNormal( const in vec3 rgb ) {
	return 2.0 * rgb.xyz - 1.0;
}
const float PackUpscale = 256. / 255.;const float UnpackDownscale = 255. / 256.;const float ShiftRight8 = 1. / 256.;
const float Inv255 = 1. / 255.;
const vec4 PackFactors = vec4( 1.0, 256.0, 256.0 * 256.0, 256.0 * 256.0 * 256.0 );
const vec2 UnpackFactors2 = vec2( UnpackDownscale, 1.0 / PackFactors.g );
const vec3 UnpackFactors3 = vec3( UnpackDownscale / PackFactors.rg, 1.0 / PackFactors.b );
const vec4 UnpackFactors4 = vec4( UnpackDownscale / PackFactors.rgb, 1.0 / PackFactors.a );
vec4 packDepthToRGBA( const in float v ) {
	if( v <= 0.0 )
		return vec4( 0., 0., 0., 0. );
	if( v >= 1.0 )
		return vec4( 1., 1., 1., 1. );
	float vuf;
	float af = modf( v * PackFactors.a, vuf );
	float bf = modf( vuf * ShiftRight8, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec4( vuf * Inv255, gf * PackUpscale, bf * PackUpscale, af );
}
vec3 packDepthToRGB( const in float v ) {
	if( v <= 0.0 )
		return vec3( 0., 0., 0. );
	if( v >= 1.0 )
		return vec3( 1., 1., 1. );
	float vuf;
	float bf = modf( v * PackFactors.b, vuf );
	float gf = modf( vuf * ShiftRight8, vuf );
	return vec3( vuf * Inv255, gf * PackUpscale, bf );
}
vec2 packDepthToRG( const in float v ) {
	if( v <= 0.0 )
		return vec2( 0., 0. );
	if( v >= 1.0 )
		return vec2( 1., 1. );
	float vuf;
	float gf = modf( v * 256., vuf );
	return vec2( vuf * Inv255, gf );
}
float unpackRGBAToDepth( const in vec4 v ) {
	return dot( v, UnpackFactors4 );
}
float unpackRGBToDepth( const in vec3 v ) {
	return dot( v, UnpackFactors3 );
}
float unpackRGToDepth( const in vec2 v ) {
	return v.r * UnpackFactors2.r + v.g * UnpackFactors2.g;
}
vec4 pack2HalfToRGBA( const in vec2 v ) {
	vec4 r = vec4( v.x, fract( v.x * 255.0 ), v.y, fract( v.y * 255.0 ) );
	return vec4( r.x - r.y / 255.0, r.y, r.z - r.w / 255.0, r.w );
}
vec2 unpackRGBATo2Half( const in vec4 v ) {
	return vec2( v.x + ( v.y / 255.0 ), v.z + ( v.w / 255.0 ) );
}
float viewZToOrthographicDepth( const in float viewZ, const in float near, const in float far ) {
	return ( viewZ + near ) / ( near - far );
}
float orthographicDepthToViewZ( const in float depth, const in float near, const in float far ) {
	#ifdef USE_REVERSED_DEPTH_BUFFER
	
		return depth * ( far - near ) - far;
	#else
		return depth * ( near - far ) - near;
	#endif
}
float viewZToPerspectiveDepth( const in float viewZ, const in float near, const in float far ) {
	return ( ( near + viewZ ) * far ) / ( ( far - near ) * viewZ );
}
float perspectiveDepthToViewZ( const in float depth, const in float near, const in float far ) {
	
	#ifdef USE_REVERSED_DEPTH_BUFFER
		return ( near * far ) / ( ( near - far ) * depth - near );
	#else
		return ( near * far ) / ( ( far - near ) * depth - far );
	#endif
}`,uM=`#ifdef PREMULTIPLIED_ALPHA
	gl_FragColor.rgb *= gl_FragColor.a;
#endif`,hM=`vec4 mvPosition = vec4( transformed, 1.0 );
#ifdef USE_BATCHING
	mvPosition = batchingMatrix * mvPosition;
#endif
#ifdef USE_INSTANCING
	mvPosition = instanceMatrix * mvPosition;
#endif
mvPosition = modelViewMatrix * mvPosition;
gl_Position = projectionMatrix * mvPosition;`,fM=`#ifdef DITHERING
	gl_FragColor.rgb = dithering( gl_FragColor.rgb );
#endif`,dM=`#ifdef DITHERING
	vec3 dithering( vec3 color ) {
		float grid_position = rand( gl_FragCoord.xy );
		vec3 dither_shift_RGB = vec3( 0.25 / 255.0, -0.25 / 255.0, 0.25 / 255.0 );
		dither_shift_RGB = mix( 2.0 * dither_shift_RGB, -2.0 * dither_shift_RGB, grid_position );
		return color + dither_shift_RGB;
	}
#endif`,pM=`float roughnessFactor = roughness;
#ifdef USE_ROUGHNESSMAP
	vec4 texelRoughness = texture2D( roughnessMap, vRoughnessMapUv );
	roughnessFactor *= texelRoughness.g;
#endif`,mM=`#ifdef USE_ROUGHNESSMAP
	uniform sampler2D roughnessMap;
#endif`,gM=`#if NUM_SPOT_LIGHT_COORDS > 0
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#if NUM_SPOT_LIGHT_MAPS > 0
	uniform sampler2D spotLightMap[ NUM_SPOT_LIGHT_MAPS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		#define SUN_LIGHT_CASCADES 2
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#else
			uniform sampler2D sunShadowMap[ NUM_SUN_LIGHT_SHADOWS ];
		#endif
		uniform mat4 sunShadowMatrix[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		uniform vec4 sunShadowCascade[ NUM_SUN_LIGHT_SHADOWS * SUN_LIGHT_CASCADES ];
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
		struct SunLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SunLightShadow sunLightShadows[ NUM_SUN_LIGHT_SHADOWS ];
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#else
			uniform sampler2D directionalShadowMap[ NUM_DIR_LIGHT_SHADOWS ];
		#endif
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform sampler2DShadow spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#else
			uniform sampler2D spotShadowMap[ NUM_SPOT_LIGHT_SHADOWS ];
		#endif
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#if defined( SHADOWMAP_TYPE_PCF )
			uniform samplerCubeShadow pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#elif defined( SHADOWMAP_TYPE_BASIC )
			uniform samplerCube pointShadowMap[ NUM_POINT_LIGHT_SHADOWS ];
		#endif
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float interleavedGradientNoise( vec2 position ) {
			return fract( 52.9829189 * fract( dot( position, vec2( 0.06711056, 0.00583715 ) ) ) );
		}
		vec2 vogelDiskSample( int sampleIndex, int samplesCount, float phi ) {
			const float goldenAngle = 2.399963229728653;
			float r = sqrt( ( float( sampleIndex ) + 0.5 ) / float( samplesCount ) );
			float theta = float( sampleIndex ) * goldenAngle + phi;
			return vec2( cos( theta ), sin( theta ) ) * r;
		}
	#endif
	#if defined( SHADOWMAP_TYPE_PCF )
		float getShadow( sampler2DShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 texelSize = vec2( 1.0 ) / shadowMapSize;
				vec2 radius = shadowRadius * texelSize;
				float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
				shadow = (
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 0, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 1, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 2, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 3, 5, phi ) * radius, shadowCoord.z ) ) +
					texture( shadowMap, vec3( shadowCoord.xy + vogelDiskSample( 4, 5, phi ) * radius, shadowCoord.z ) )
				) * 0.2;
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#elif defined( SHADOWMAP_TYPE_VSM )
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				vec2 distribution = texture2D( shadowMap, shadowCoord.xy ).rg;
				float mean = distribution.x;
				float variance = distribution.y * distribution.y;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					float hard_shadow = step( mean, shadowCoord.z );
				#else
					float hard_shadow = step( shadowCoord.z, mean );
				#endif
				
				if ( hard_shadow == 1.0 ) {
					shadow = 1.0;
				} else {
					variance = max( variance, 0.0000001 );
					float d = shadowCoord.z - mean;
					float p_max = variance / ( variance + d * d );
					p_max = clamp( ( p_max - 0.3 ) / 0.65, 0.0, 1.0 );
					shadow = max( hard_shadow, p_max );
				}
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#else
		float getShadow( sampler2D shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord ) {
			float shadow = 1.0;
			shadowCoord.xyz /= shadowCoord.w;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				shadowCoord.z -= shadowBias;
			#else
				shadowCoord.z += shadowBias;
			#endif
			bool inFrustum = shadowCoord.x >= 0.0 && shadowCoord.x <= 1.0 && shadowCoord.y >= 0.0 && shadowCoord.y <= 1.0;
			bool frustumTest = inFrustum && shadowCoord.z <= 1.0;
			if ( frustumTest ) {
				float depth = texture2D( shadowMap, shadowCoord.xy ).r;
				#ifdef USE_REVERSED_DEPTH_BUFFER
					shadow = step( depth, shadowCoord.z );
				#else
					shadow = step( shadowCoord.z, depth );
				#endif
			}
			return mix( 1.0, shadow, shadowIntensity );
		}
	#endif
	#if NUM_SUN_LIGHT_SHADOWS > 0
		float getSunShadow(
			#if defined( SHADOWMAP_TYPE_PCF )
				sampler2DShadow shadowMap,
			#else
				sampler2D shadowMap,
			#endif
			SunLightShadow sunLightShadow,
			int shadowIndex
		) {
			vec4 shadowWorldPosition = vec4( vSunShadowWorldPosition.xyz + vSunShadowWorldNormal * sunLightShadow.shadowNormalBias, 1.0 );
			float viewDepth = vSunShadowWorldPosition.w;
			int cascadeOffset = shadowIndex * SUN_LIGHT_CASCADES;
			float shadow = 1.0;
			for ( int i = SUN_LIGHT_CASCADES - 1; i >= 0; i -- ) {
				vec4 cascade = sunShadowCascade[ cascadeOffset + i ];
				if ( viewDepth >= cascade.x && viewDepth < cascade.y ) {
					float cascadeShadow = getShadow(
						shadowMap,
						sunLightShadow.shadowMapSize,
						sunLightShadow.shadowIntensity,
						sunLightShadow.shadowBias,
						sunLightShadow.shadowRadius,
						sunShadowMatrix[ cascadeOffset + i ] * shadowWorldPosition
					);
					shadow = mix( cascadeShadow, shadow, smoothstep( cascade.z, cascade.y, viewDepth ) );
				}
			}
			return shadow;
		}
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
	#if defined( SHADOWMAP_TYPE_PCF )
	float getPointShadow( samplerCubeShadow shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 bd3D = normalize( lightToPosition );
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float lightDistance = length( lightToPosition );
			float depthRange = shadowCameraFar - shadowCameraNear;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				float depthA = - shadowCameraNear / depthRange - shadowBias;
				float depthB = shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#else
				float depthA = shadowCameraFar / depthRange + shadowBias;
				float depthB = - shadowCameraNear * shadowCameraFar / ( depthRange * lightDistance );
			#endif
			float texelSize = shadowRadius / shadowMapSize.x;
			vec3 absDir = abs( bd3D );
			vec3 tangent = absDir.x > absDir.z ? vec3( 0.0, 1.0, 0.0 ) : vec3( 1.0, 0.0, 0.0 );
			tangent = normalize( cross( bd3D, tangent ) );
			vec3 bitangent = cross( bd3D, tangent );
			float phi = interleavedGradientNoise( gl_FragCoord.xy ) * PI2;
			shadow = 0.0;
			for ( int i = 0; i < 5; i ++ ) {
				vec2 offset = vogelDiskSample( i, 5, phi );
				vec3 direction = bd3D + ( tangent * offset.x + bitangent * offset.y ) * texelSize;
				vec3 absDirection = abs( direction );
				float dp = depthA + depthB / max( max( absDirection.x, absDirection.y ), absDirection.z );
				shadow += texture( shadowMap, vec4( direction, dp ) );
			}
			shadow *= 0.2;
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#elif defined( SHADOWMAP_TYPE_BASIC )
	float getPointShadow( samplerCube shadowMap, vec2 shadowMapSize, float shadowIntensity, float shadowBias, float shadowRadius, vec4 shadowCoord, float shadowCameraNear, float shadowCameraFar ) {
		float shadow = 1.0;
		vec3 lightToPosition = shadowCoord.xyz;
		vec3 absVec = abs( lightToPosition );
		float viewSpaceZ = max( max( absVec.x, absVec.y ), absVec.z );
		if ( viewSpaceZ - shadowCameraFar <= 0.0 && viewSpaceZ - shadowCameraNear >= 0.0 ) {
			float dp = ( shadowCameraFar * ( viewSpaceZ - shadowCameraNear ) ) / ( viewSpaceZ * ( shadowCameraFar - shadowCameraNear ) );
			dp += shadowBias;
			vec3 bd3D = normalize( lightToPosition );
			float depth = textureCube( shadowMap, bd3D ).r;
			#ifdef USE_REVERSED_DEPTH_BUFFER
				depth = 1.0 - depth;
			#endif
			shadow = step( dp, depth );
		}
		return mix( 1.0, shadow, shadowIntensity );
	}
	#endif
	#endif
#endif`,_M=`#if NUM_SPOT_LIGHT_COORDS > 0
	uniform mat4 spotLightMatrix[ NUM_SPOT_LIGHT_COORDS ];
	varying vec4 vSpotLightCoord[ NUM_SPOT_LIGHT_COORDS ];
#endif
#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
		varying vec4 vSunShadowWorldPosition;
		varying vec3 vSunShadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		uniform mat4 directionalShadowMatrix[ NUM_DIR_LIGHT_SHADOWS ];
		varying vec4 vDirectionalShadowCoord[ NUM_DIR_LIGHT_SHADOWS ];
		struct DirectionalLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform DirectionalLightShadow directionalLightShadows[ NUM_DIR_LIGHT_SHADOWS ];
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
		struct SpotLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
		};
		uniform SpotLightShadow spotLightShadows[ NUM_SPOT_LIGHT_SHADOWS ];
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		uniform mat4 pointShadowMatrix[ NUM_POINT_LIGHT_SHADOWS ];
		varying vec4 vPointShadowCoord[ NUM_POINT_LIGHT_SHADOWS ];
		struct PointLightShadow {
			float shadowIntensity;
			float shadowBias;
			float shadowNormalBias;
			float shadowRadius;
			vec2 shadowMapSize;
			float shadowCameraNear;
			float shadowCameraFar;
		};
		uniform PointLightShadow pointLightShadows[ NUM_POINT_LIGHT_SHADOWS ];
	#endif
#endif`,vM=`#if ( defined( USE_SHADOWMAP ) && ( NUM_DIR_LIGHT_SHADOWS > 0 || NUM_SUN_LIGHT_SHADOWS > 0 || NUM_POINT_LIGHT_SHADOWS > 0 ) ) || ( NUM_SPOT_LIGHT_COORDS > 0 )
	#ifdef HAS_NORMAL
		vec3 shadowWorldNormal = transformNormalByInverseViewMatrix( transformedNormal, viewMatrix );
	#else
		vec3 shadowWorldNormal = vec3( 0.0 );
	#endif
	vec4 shadowWorldPosition;
#endif
#if defined( USE_SHADOWMAP )
	#if NUM_SUN_LIGHT_SHADOWS > 0
		vSunShadowWorldPosition = vec4( worldPosition.xyz, - mvPosition.z );
		vSunShadowWorldNormal = shadowWorldNormal;
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * directionalLightShadows[ i ].shadowNormalBias, 0 );
			vDirectionalShadowCoord[ i ] = directionalShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0
		#pragma unroll_loop_start
		for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
			shadowWorldPosition = worldPosition + vec4( shadowWorldNormal * pointLightShadows[ i ].shadowNormalBias, 0 );
			vPointShadowCoord[ i ] = pointShadowMatrix[ i ] * shadowWorldPosition;
		}
		#pragma unroll_loop_end
	#endif
#endif
#if NUM_SPOT_LIGHT_COORDS > 0
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_COORDS; i ++ ) {
		shadowWorldPosition = worldPosition;
		#if ( defined( USE_SHADOWMAP ) && UNROLLED_LOOP_INDEX < NUM_SPOT_LIGHT_SHADOWS )
			shadowWorldPosition.xyz += shadowWorldNormal * spotLightShadows[ i ].shadowNormalBias;
		#endif
		vSpotLightCoord[ i ] = spotLightMatrix[ i ] * shadowWorldPosition;
	}
	#pragma unroll_loop_end
#endif`,yM=`float getShadowMask() {
	float shadow = 1.0;
	#ifdef USE_SHADOWMAP
	#if NUM_SUN_LIGHT_SHADOWS > 0
	SunLightShadow sunLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SUN_LIGHT_SHADOWS; i ++ ) {
		sunLight = sunLightShadows[ i ];
		shadow *= receiveShadow ? getSunShadow( sunShadowMap[ i ], sunLight, UNROLLED_LOOP_INDEX ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_DIR_LIGHT_SHADOWS > 0
	DirectionalLightShadow directionalLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_DIR_LIGHT_SHADOWS; i ++ ) {
		directionalLight = directionalLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( directionalShadowMap[ i ], directionalLight.shadowMapSize, directionalLight.shadowIntensity, directionalLight.shadowBias, directionalLight.shadowRadius, vDirectionalShadowCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_SPOT_LIGHT_SHADOWS > 0
	SpotLightShadow spotLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_SPOT_LIGHT_SHADOWS; i ++ ) {
		spotLight = spotLightShadows[ i ];
		shadow *= receiveShadow ? getShadow( spotShadowMap[ i ], spotLight.shadowMapSize, spotLight.shadowIntensity, spotLight.shadowBias, spotLight.shadowRadius, vSpotLightCoord[ i ] ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#if NUM_POINT_LIGHT_SHADOWS > 0 && ( defined( SHADOWMAP_TYPE_PCF ) || defined( SHADOWMAP_TYPE_BASIC ) )
	PointLightShadow pointLight;
	#pragma unroll_loop_start
	for ( int i = 0; i < NUM_POINT_LIGHT_SHADOWS; i ++ ) {
		pointLight = pointLightShadows[ i ];
		shadow *= receiveShadow ? getPointShadow( pointShadowMap[ i ], pointLight.shadowMapSize, pointLight.shadowIntensity, pointLight.shadowBias, pointLight.shadowRadius, vPointShadowCoord[ i ], pointLight.shadowCameraNear, pointLight.shadowCameraFar ) : 1.0;
	}
	#pragma unroll_loop_end
	#endif
	#endif
	return shadow;
}`,xM=`#ifdef USE_SKINNING
	mat4 boneMatX = getBoneMatrix( skinIndex.x );
	mat4 boneMatY = getBoneMatrix( skinIndex.y );
	mat4 boneMatZ = getBoneMatrix( skinIndex.z );
	mat4 boneMatW = getBoneMatrix( skinIndex.w );
#endif`,bM=`#ifdef USE_SKINNING
	uniform mat4 bindMatrix;
	uniform mat4 bindMatrixInverse;
	uniform highp sampler2D boneTexture;
	mat4 getBoneMatrix( const in float i ) {
		int size = textureSize( boneTexture, 0 ).x;
		int j = int( i ) * 4;
		int x = j % size;
		int y = j / size;
		vec4 v1 = texelFetch( boneTexture, ivec2( x, y ), 0 );
		vec4 v2 = texelFetch( boneTexture, ivec2( x + 1, y ), 0 );
		vec4 v3 = texelFetch( boneTexture, ivec2( x + 2, y ), 0 );
		vec4 v4 = texelFetch( boneTexture, ivec2( x + 3, y ), 0 );
		return mat4( v1, v2, v3, v4 );
	}
#endif`,MM=`#ifdef USE_SKINNING
	vec4 skinVertex = bindMatrix * vec4( transformed, 1.0 );
	vec4 skinned = vec4( 0.0 );
	skinned += boneMatX * skinVertex * skinWeight.x;
	skinned += boneMatY * skinVertex * skinWeight.y;
	skinned += boneMatZ * skinVertex * skinWeight.z;
	skinned += boneMatW * skinVertex * skinWeight.w;
	transformed = ( bindMatrixInverse * skinned ).xyz;
#endif`,SM=`#ifdef USE_SKINNING
	mat4 skinMatrix = mat4( 0.0 );
	skinMatrix += skinWeight.x * boneMatX;
	skinMatrix += skinWeight.y * boneMatY;
	skinMatrix += skinWeight.z * boneMatZ;
	skinMatrix += skinWeight.w * boneMatW;
	skinMatrix = bindMatrixInverse * skinMatrix * bindMatrix;
	objectNormal = vec4( skinMatrix * vec4( objectNormal, 0.0 ) ).xyz;
	#ifdef USE_TANGENT
		objectTangent = vec4( skinMatrix * vec4( objectTangent, 0.0 ) ).xyz;
	#endif
#endif`,wM=`float specularStrength;
#ifdef USE_SPECULARMAP
	vec4 texelSpecular = texture2D( specularMap, vSpecularMapUv );
	specularStrength = texelSpecular.r;
#else
	specularStrength = 1.0;
#endif`,TM=`#ifdef USE_SPECULARMAP
	uniform sampler2D specularMap;
#endif`,AM=`#if defined( TONE_MAPPING )
	gl_FragColor.rgb = toneMapping( gl_FragColor.rgb );
#endif`,EM=`#ifndef saturate
#define saturate( a ) clamp( a, 0.0, 1.0 )
#endif
uniform float toneMappingExposure;
vec3 LinearToneMapping( vec3 color ) {
	return saturate( toneMappingExposure * color );
}
vec3 ReinhardToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	return saturate( color / ( vec3( 1.0 ) + color ) );
}
vec3 CineonToneMapping( vec3 color ) {
	color *= toneMappingExposure;
	color = max( vec3( 0.0 ), color - 0.004 );
	return pow( ( color * ( 6.2 * color + 0.5 ) ) / ( color * ( 6.2 * color + 1.7 ) + 0.06 ), vec3( 2.2 ) );
}
vec3 RRTAndODTFit( vec3 v ) {
	vec3 a = v * ( v + 0.0245786 ) - 0.000090537;
	vec3 b = v * ( 0.983729 * v + 0.4329510 ) + 0.238081;
	return a / b;
}
vec3 ACESFilmicToneMapping( vec3 color ) {
	const mat3 ACESInputMat = mat3(
		vec3( 0.59719, 0.07600, 0.02840 ),		vec3( 0.35458, 0.90834, 0.13383 ),
		vec3( 0.04823, 0.01566, 0.83777 )
	);
	const mat3 ACESOutputMat = mat3(
		vec3(  1.60475, -0.10208, -0.00327 ),		vec3( -0.53108,  1.10813, -0.07276 ),
		vec3( -0.07367, -0.00605,  1.07602 )
	);
	color *= toneMappingExposure / 0.6;
	color = ACESInputMat * color;
	color = RRTAndODTFit( color );
	color = ACESOutputMat * color;
	return saturate( color );
}
const mat3 LINEAR_REC2020_TO_LINEAR_SRGB = mat3(
	vec3( 1.6605, - 0.1246, - 0.0182 ),
	vec3( - 0.5876, 1.1329, - 0.1006 ),
	vec3( - 0.0728, - 0.0083, 1.1187 )
);
const mat3 LINEAR_SRGB_TO_LINEAR_REC2020 = mat3(
	vec3( 0.6274, 0.0691, 0.0164 ),
	vec3( 0.3293, 0.9195, 0.0880 ),
	vec3( 0.0433, 0.0113, 0.8956 )
);
vec3 agxDefaultContrastApprox( vec3 x ) {
	vec3 x2 = x * x;
	vec3 x4 = x2 * x2;
	return + 15.5 * x4 * x2
		- 40.14 * x4 * x
		+ 31.96 * x4
		- 6.868 * x2 * x
		+ 0.4298 * x2
		+ 0.1191 * x
		- 0.00232;
}
vec3 AgXToneMapping( vec3 color ) {
	const mat3 AgXInsetMatrix = mat3(
		vec3( 0.856627153315983, 0.137318972929847, 0.11189821299995 ),
		vec3( 0.0951212405381588, 0.761241990602591, 0.0767994186031903 ),
		vec3( 0.0482516061458583, 0.101439036467562, 0.811302368396859 )
	);
	const mat3 AgXOutsetMatrix = mat3(
		vec3( 1.1271005818144368, - 0.1413297634984383, - 0.14132976349843826 ),
		vec3( - 0.11060664309660323, 1.157823702216272, - 0.11060664309660294 ),
		vec3( - 0.016493938717834573, - 0.016493938717834257, 1.2519364065950405 )
	);
	const float AgxMinEv = - 12.47393;	const float AgxMaxEv = 4.026069;
	color *= toneMappingExposure;
	color = LINEAR_SRGB_TO_LINEAR_REC2020 * color;
	color = AgXInsetMatrix * color;
	color = max( color, 1e-10 );	color = log2( color );
	color = ( color - AgxMinEv ) / ( AgxMaxEv - AgxMinEv );
	color = clamp( color, 0.0, 1.0 );
	color = agxDefaultContrastApprox( color );
	color = AgXOutsetMatrix * color;
	color = pow( max( vec3( 0.0 ), color ), vec3( 2.2 ) );
	color = LINEAR_REC2020_TO_LINEAR_SRGB * color;
	color = clamp( color, 0.0, 1.0 );
	return color;
}
vec3 NeutralToneMapping( vec3 color ) {
	const float StartCompression = 0.8 - 0.04;
	const float Desaturation = 0.15;
	color *= toneMappingExposure;
	float x = min( color.r, min( color.g, color.b ) );
	float offset = x < 0.08 ? x - 6.25 * x * x : 0.04;
	color -= offset;
	float peak = max( color.r, max( color.g, color.b ) );
	if ( peak < StartCompression ) return color;
	float d = 1. - StartCompression;
	float newPeak = 1. - d * d / ( peak + d - StartCompression );
	color *= newPeak / peak;
	float g = 1. - 1. / ( Desaturation * ( peak - newPeak ) + 1. );
	return mix( color, vec3( newPeak ), g );
}
vec3 CustomToneMapping( vec3 color ) { return color; }`,CM=`#ifdef USE_TRANSMISSION
	material.transmission = transmission;
	material.transmissionAlpha = 1.0;
	material.thickness = thickness;
	material.attenuationDistance = attenuationDistance;
	material.attenuationColor = attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		material.transmission *= texture2D( transmissionMap, vTransmissionMapUv ).r;
	#endif
	#ifdef USE_THICKNESSMAP
		material.thickness *= texture2D( thicknessMap, vThicknessMapUv ).g;
	#endif
	vec3 pos = vWorldPosition;
	vec3 v = normalize( cameraPosition - pos );
	vec3 n = transformNormalByInverseViewMatrix( normal, viewMatrix );
	vec4 transmitted = getIBLVolumeRefraction(
		n, v, material.roughness, material.diffuseContribution, material.specularColorBlended, material.specularF90,
		pos, modelMatrix, viewMatrix, projectionMatrix, material.dispersion, material.ior, material.thickness,
		material.attenuationColor, material.attenuationDistance );
	material.transmissionAlpha = mix( material.transmissionAlpha, transmitted.a, material.transmission );
	totalDiffuse = mix( totalDiffuse, transmitted.rgb, material.transmission );
#endif`,RM=`#ifdef USE_TRANSMISSION
	uniform float transmission;
	uniform float thickness;
	uniform float attenuationDistance;
	uniform vec3 attenuationColor;
	#ifdef USE_TRANSMISSIONMAP
		uniform sampler2D transmissionMap;
	#endif
	#ifdef USE_THICKNESSMAP
		uniform sampler2D thicknessMap;
	#endif
	uniform vec2 transmissionSamplerSize;
	uniform sampler2D transmissionSamplerMap;
	uniform mat4 modelMatrix;
	uniform mat4 projectionMatrix;
	varying vec3 vWorldPosition;
	float w0( float a ) {
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - a + 3.0 ) - 3.0 ) + 1.0 );
	}
	float w1( float a ) {
		return ( 1.0 / 6.0 ) * ( a *  a * ( 3.0 * a - 6.0 ) + 4.0 );
	}
	float w2( float a ){
		return ( 1.0 / 6.0 ) * ( a * ( a * ( - 3.0 * a + 3.0 ) + 3.0 ) + 1.0 );
	}
	float w3( float a ) {
		return ( 1.0 / 6.0 ) * ( a * a * a );
	}
	float g0( float a ) {
		return w0( a ) + w1( a );
	}
	float g1( float a ) {
		return w2( a ) + w3( a );
	}
	float h0( float a ) {
		return - 1.0 + w1( a ) / ( w0( a ) + w1( a ) );
	}
	float h1( float a ) {
		return 1.0 + w3( a ) / ( w2( a ) + w3( a ) );
	}
	vec4 bicubic( sampler2D tex, vec2 uv, vec4 texelSize, float lod ) {
		uv = uv * texelSize.zw + 0.5;
		vec2 iuv = floor( uv );
		vec2 fuv = fract( uv );
		float g0x = g0( fuv.x );
		float g1x = g1( fuv.x );
		float h0x = h0( fuv.x );
		float h1x = h1( fuv.x );
		float h0y = h0( fuv.y );
		float h1y = h1( fuv.y );
		vec2 p0 = ( vec2( iuv.x + h0x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p1 = ( vec2( iuv.x + h1x, iuv.y + h0y ) - 0.5 ) * texelSize.xy;
		vec2 p2 = ( vec2( iuv.x + h0x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		vec2 p3 = ( vec2( iuv.x + h1x, iuv.y + h1y ) - 0.5 ) * texelSize.xy;
		return g0( fuv.y ) * ( g0x * textureLod( tex, p0, lod ) + g1x * textureLod( tex, p1, lod ) ) +
			g1( fuv.y ) * ( g0x * textureLod( tex, p2, lod ) + g1x * textureLod( tex, p3, lod ) );
	}
	vec4 textureBicubic( sampler2D sampler, vec2 uv, float lod ) {
		vec2 fLodSize = vec2( textureSize( sampler, int( lod ) ) );
		vec2 cLodSize = vec2( textureSize( sampler, int( lod + 1.0 ) ) );
		vec2 fLodSizeInv = 1.0 / fLodSize;
		vec2 cLodSizeInv = 1.0 / cLodSize;
		vec4 fSample = bicubic( sampler, uv, vec4( fLodSizeInv, fLodSize ), floor( lod ) );
		vec4 cSample = bicubic( sampler, uv, vec4( cLodSizeInv, cLodSize ), ceil( lod ) );
		return mix( fSample, cSample, fract( lod ) );
	}
	vec3 getVolumeTransmissionRay( const in vec3 n, const in vec3 v, const in float thickness, const in float ior, const in mat4 modelMatrix ) {
		vec3 refractionVector = refract( - v, normalize( n ), 1.0 / ior );
		vec3 modelScale;
		modelScale.x = length( vec3( modelMatrix[ 0 ].xyz ) );
		modelScale.y = length( vec3( modelMatrix[ 1 ].xyz ) );
		modelScale.z = length( vec3( modelMatrix[ 2 ].xyz ) );
		return normalize( refractionVector ) * thickness * modelScale;
	}
	float applyIorToRoughness( const in float roughness, const in float ior ) {
		return roughness * clamp( ior * 2.0 - 2.0, 0.0, 1.0 );
	}
	vec4 getTransmissionSample( const in vec2 fragCoord, const in float roughness, const in float ior ) {
		float lod = log2( transmissionSamplerSize.x ) * applyIorToRoughness( roughness, ior );
		return textureBicubic( transmissionSamplerMap, fragCoord.xy, lod );
	}
	vec3 volumeAttenuation( const in float transmissionDistance, const in vec3 attenuationColor, const in float attenuationDistance ) {
		if ( isinf( attenuationDistance ) ) {
			return vec3( 1.0 );
		} else {
			vec3 attenuationCoefficient = -log( attenuationColor ) / attenuationDistance;
			vec3 transmittance = exp( - attenuationCoefficient * transmissionDistance );			return transmittance;
		}
	}
	vec4 getIBLVolumeRefraction( const in vec3 n, const in vec3 v, const in float roughness, const in vec3 diffuseColor,
		const in vec3 specularColor, const in float specularF90, const in vec3 position, const in mat4 modelMatrix,
		const in mat4 viewMatrix, const in mat4 projMatrix, const in float dispersion, const in float ior, const in float thickness,
		const in vec3 attenuationColor, const in float attenuationDistance ) {
		vec4 transmittedLight;
		vec3 transmittance;
		#ifdef USE_DISPERSION
			float halfSpread = ( ior - 1.0 ) * 0.025 * dispersion;
			vec3 iors = vec3( ior - halfSpread, ior, ior + halfSpread );
			for ( int i = 0; i < 3; i ++ ) {
				vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, iors[ i ], modelMatrix );
				vec3 refractedRayExit = position + transmissionRay;
				vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
				vec2 refractionCoords = ndcPos.xy / ndcPos.w;
				refractionCoords += 1.0;
				refractionCoords /= 2.0;
				vec4 transmissionSample = getTransmissionSample( refractionCoords, roughness, iors[ i ] );
				transmittedLight[ i ] = transmissionSample[ i ];
				transmittedLight.a += transmissionSample.a;
				transmittance[ i ] = diffuseColor[ i ] * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance )[ i ];
			}
			transmittedLight.a /= 3.0;
		#else
			vec3 transmissionRay = getVolumeTransmissionRay( n, v, thickness, ior, modelMatrix );
			vec3 refractedRayExit = position + transmissionRay;
			vec4 ndcPos = projMatrix * viewMatrix * vec4( refractedRayExit, 1.0 );
			vec2 refractionCoords = ndcPos.xy / ndcPos.w;
			refractionCoords += 1.0;
			refractionCoords /= 2.0;
			transmittedLight = getTransmissionSample( refractionCoords, roughness, ior );
			transmittance = diffuseColor * volumeAttenuation( length( transmissionRay ), attenuationColor, attenuationDistance );
		#endif
		vec3 attenuatedColor = transmittance * transmittedLight.rgb;
		vec3 F = EnvironmentBRDF( n, v, specularColor, specularF90, roughness );
		float transmittanceFactor = ( transmittance.r + transmittance.g + transmittance.b ) / 3.0;
		return vec4( ( 1.0 - F ) * attenuatedColor, 1.0 - ( 1.0 - transmittedLight.a ) * transmittanceFactor );
	}
#endif`,PM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_SPECULARMAP
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,IM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	varying vec2 vUv;
#endif
#ifdef USE_MAP
	uniform mat3 mapTransform;
	varying vec2 vMapUv;
#endif
#ifdef USE_ALPHAMAP
	uniform mat3 alphaMapTransform;
	varying vec2 vAlphaMapUv;
#endif
#ifdef USE_LIGHTMAP
	uniform mat3 lightMapTransform;
	varying vec2 vLightMapUv;
#endif
#ifdef USE_AOMAP
	uniform mat3 aoMapTransform;
	varying vec2 vAoMapUv;
#endif
#ifdef USE_BUMPMAP
	uniform mat3 bumpMapTransform;
	varying vec2 vBumpMapUv;
#endif
#ifdef USE_NORMALMAP
	uniform mat3 normalMapTransform;
	varying vec2 vNormalMapUv;
#endif
#ifdef USE_DISPLACEMENTMAP
	uniform mat3 displacementMapTransform;
	varying vec2 vDisplacementMapUv;
#endif
#ifdef USE_EMISSIVEMAP
	uniform mat3 emissiveMapTransform;
	varying vec2 vEmissiveMapUv;
#endif
#ifdef USE_METALNESSMAP
	uniform mat3 metalnessMapTransform;
	varying vec2 vMetalnessMapUv;
#endif
#ifdef USE_ROUGHNESSMAP
	uniform mat3 roughnessMapTransform;
	varying vec2 vRoughnessMapUv;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	uniform mat3 diffuseRoughnessMapTransform;
	varying vec2 vDiffuseRoughnessMapUv;
#endif
#ifdef USE_ANISOTROPYMAP
	uniform mat3 anisotropyMapTransform;
	varying vec2 vAnisotropyMapUv;
#endif
#ifdef USE_CLEARCOATMAP
	uniform mat3 clearcoatMapTransform;
	varying vec2 vClearcoatMapUv;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	uniform mat3 clearcoatNormalMapTransform;
	varying vec2 vClearcoatNormalMapUv;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	uniform mat3 clearcoatRoughnessMapTransform;
	varying vec2 vClearcoatRoughnessMapUv;
#endif
#ifdef USE_SHEEN_COLORMAP
	uniform mat3 sheenColorMapTransform;
	varying vec2 vSheenColorMapUv;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	uniform mat3 sheenRoughnessMapTransform;
	varying vec2 vSheenRoughnessMapUv;
#endif
#ifdef USE_IRIDESCENCEMAP
	uniform mat3 iridescenceMapTransform;
	varying vec2 vIridescenceMapUv;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	uniform mat3 iridescenceThicknessMapTransform;
	varying vec2 vIridescenceThicknessMapUv;
#endif
#ifdef USE_SPECULARMAP
	uniform mat3 specularMapTransform;
	varying vec2 vSpecularMapUv;
#endif
#ifdef USE_SPECULAR_COLORMAP
	uniform mat3 specularColorMapTransform;
	varying vec2 vSpecularColorMapUv;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	uniform mat3 specularIntensityMapTransform;
	varying vec2 vSpecularIntensityMapUv;
#endif
#ifdef USE_TRANSMISSIONMAP
	uniform mat3 transmissionMapTransform;
	varying vec2 vTransmissionMapUv;
#endif
#ifdef USE_THICKNESSMAP
	uniform mat3 thicknessMapTransform;
	varying vec2 vThicknessMapUv;
#endif`,DM=`#if defined( USE_UV ) || defined( USE_ANISOTROPY )
	vUv = vec3( uv, 1 ).xy;
#endif
#ifdef USE_MAP
	vMapUv = ( mapTransform * vec3( MAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ALPHAMAP
	vAlphaMapUv = ( alphaMapTransform * vec3( ALPHAMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_LIGHTMAP
	vLightMapUv = ( lightMapTransform * vec3( LIGHTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_AOMAP
	vAoMapUv = ( aoMapTransform * vec3( AOMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_BUMPMAP
	vBumpMapUv = ( bumpMapTransform * vec3( BUMPMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_NORMALMAP
	vNormalMapUv = ( normalMapTransform * vec3( NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DISPLACEMENTMAP
	vDisplacementMapUv = ( displacementMapTransform * vec3( DISPLACEMENTMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_EMISSIVEMAP
	vEmissiveMapUv = ( emissiveMapTransform * vec3( EMISSIVEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_METALNESSMAP
	vMetalnessMapUv = ( metalnessMapTransform * vec3( METALNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ROUGHNESSMAP
	vRoughnessMapUv = ( roughnessMapTransform * vec3( ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_DIFFUSE_ROUGHNESSMAP
	vDiffuseRoughnessMapUv = ( diffuseRoughnessMapTransform * vec3( DIFFUSE_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_ANISOTROPYMAP
	vAnisotropyMapUv = ( anisotropyMapTransform * vec3( ANISOTROPYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOATMAP
	vClearcoatMapUv = ( clearcoatMapTransform * vec3( CLEARCOATMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_NORMALMAP
	vClearcoatNormalMapUv = ( clearcoatNormalMapTransform * vec3( CLEARCOAT_NORMALMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_CLEARCOAT_ROUGHNESSMAP
	vClearcoatRoughnessMapUv = ( clearcoatRoughnessMapTransform * vec3( CLEARCOAT_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCEMAP
	vIridescenceMapUv = ( iridescenceMapTransform * vec3( IRIDESCENCEMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_IRIDESCENCE_THICKNESSMAP
	vIridescenceThicknessMapUv = ( iridescenceThicknessMapTransform * vec3( IRIDESCENCE_THICKNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_COLORMAP
	vSheenColorMapUv = ( sheenColorMapTransform * vec3( SHEEN_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SHEEN_ROUGHNESSMAP
	vSheenRoughnessMapUv = ( sheenRoughnessMapTransform * vec3( SHEEN_ROUGHNESSMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULARMAP
	vSpecularMapUv = ( specularMapTransform * vec3( SPECULARMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_COLORMAP
	vSpecularColorMapUv = ( specularColorMapTransform * vec3( SPECULAR_COLORMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_SPECULAR_INTENSITYMAP
	vSpecularIntensityMapUv = ( specularIntensityMapTransform * vec3( SPECULAR_INTENSITYMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_TRANSMISSIONMAP
	vTransmissionMapUv = ( transmissionMapTransform * vec3( TRANSMISSIONMAP_UV, 1 ) ).xy;
#endif
#ifdef USE_THICKNESSMAP
	vThicknessMapUv = ( thicknessMapTransform * vec3( THICKNESSMAP_UV, 1 ) ).xy;
#endif`,LM=`#if defined( USE_ENVMAP ) || defined( DISTANCE ) || defined ( USE_SHADOWMAP ) || defined ( USE_TRANSMISSION ) || NUM_SPOT_LIGHT_COORDS > 0
	vec4 worldPosition = vec4( transformed, 1.0 );
	#ifdef USE_BATCHING
		worldPosition = batchingMatrix * worldPosition;
	#endif
	#ifdef USE_INSTANCING
		worldPosition = instanceMatrix * worldPosition;
	#endif
	worldPosition = modelMatrix * worldPosition;
#endif`,NM=`varying vec2 vUv;
uniform mat3 uvTransform;
void main() {
	vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	gl_Position = vec4( position.xy, 1.0, 1.0 );
}`,UM=`uniform sampler2D t2D;
uniform float backgroundIntensity;
varying vec2 vUv;
void main() {
	vec4 texColor = texture2D( t2D, vUv );
	#ifdef DECODE_VIDEO_TEXTURE
		texColor = vec4( mix( pow( texColor.rgb * 0.9478672986 + vec3( 0.0521327014 ), vec3( 2.4 ) ), texColor.rgb * 0.0773993808, vec3( lessThanEqual( texColor.rgb, vec3( 0.04045 ) ) ) ), texColor.w );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,FM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,OM=`uniform float backgroundBlurriness;
uniform float backgroundIntensity;
uniform mat3 backgroundRotation;
varying vec3 vWorldDirection;
#include <envmap_common_pars_fragment>
void main() {
	#ifdef ENVMAP_TYPE_PMREM
		vec4 texColor = textureLod( envMap, backgroundRotation * vWorldDirection, roughnessToMip( backgroundBlurriness ) );
	#else
		vec4 texColor = textureCube( envMap, backgroundRotation * vWorldDirection );
	#endif
	texColor.rgb *= backgroundIntensity;
	gl_FragColor = texColor;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,kM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
	gl_Position.z = gl_Position.w;
}`,BM=`uniform samplerCube tCube;
uniform float tFlip;
uniform float opacity;
varying vec3 vWorldDirection;
void main() {
	vec4 texColor = textureCube( tCube, vec3( tFlip * vWorldDirection.x, vWorldDirection.yz ) );
	gl_FragColor = texColor;
	gl_FragColor.a *= opacity;
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,zM=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
varying vec2 vHighPrecisionZW;
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vHighPrecisionZW = gl_Position.zw;
}`,VM=`#if DEPTH_PACKING == 3200
	uniform float opacity;
#endif
#include <common>
#include <packing>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
varying vec2 vHighPrecisionZW;
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#if DEPTH_PACKING == 3200
		diffuseColor.a = opacity;
	#endif
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <logdepthbuf_fragment>
	#ifdef USE_REVERSED_DEPTH_BUFFER
		float fragCoordZ = vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ];
	#else
		float fragCoordZ = 0.5 * vHighPrecisionZW[ 0 ] / vHighPrecisionZW[ 1 ] + 0.5;
	#endif
	#if DEPTH_PACKING == 3200
		gl_FragColor = vec4( vec3( 1.0 - fragCoordZ ), opacity );
	#elif DEPTH_PACKING == 3201
		gl_FragColor = packDepthToRGBA( fragCoordZ );
	#elif DEPTH_PACKING == 3202
		gl_FragColor = vec4( packDepthToRGB( fragCoordZ ), 1.0 );
	#elif DEPTH_PACKING == 3203
		gl_FragColor = vec4( packDepthToRG( fragCoordZ ), 0.0, 1.0 );
	#endif
}`,GM=`#define DISTANCE
varying vec3 vWorldPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <skinbase_vertex>
	#include <morphinstance_vertex>
	#ifdef USE_DISPLACEMENTMAP
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <worldpos_vertex>
	#include <clipping_planes_vertex>
	vWorldPosition = worldPosition.xyz;
}`,HM=`#define DISTANCE
uniform vec3 referencePosition;
uniform float nearDistance;
uniform float farDistance;
varying vec3 vWorldPosition;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 1.0 );
	#include <clipping_planes_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	float dist = length( vWorldPosition - referencePosition );
	dist = ( dist - nearDistance ) / ( farDistance - nearDistance );
	dist = saturate( dist );
	gl_FragColor = vec4( dist, 0.0, 0.0, 1.0 );
}`,WM=`varying vec3 vWorldDirection;
#include <common>
void main() {
	vWorldDirection = transformDirection( position, modelMatrix );
	#include <begin_vertex>
	#include <project_vertex>
}`,XM=`uniform sampler2D tEquirect;
varying vec3 vWorldDirection;
#include <common>
void main() {
	vec3 direction = normalize( vWorldDirection );
	vec2 sampleUV = equirectUv( direction );
	gl_FragColor = texture2D( tEquirect, sampleUV );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
}`,qM=`uniform float scale;
attribute float lineDistance;
varying float vLineDistance;
#include <common>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	vLineDistance = scale * lineDistance;
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,$M=`uniform vec3 diffuse;
uniform float opacity;
uniform float dashSize;
uniform float totalSize;
varying float vLineDistance;
#include <common>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	if ( mod( vLineDistance, totalSize ) > dashSize ) {
		discard;
	}
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,YM=`#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#if defined ( USE_ENVMAP ) || defined ( USE_SKINNING )
		#include <beginnormal_vertex>
		#include <morphnormal_vertex>
		#include <skinbase_vertex>
		#include <skinnormal_vertex>
		#include <defaultnormal_vertex>
	#endif
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <fog_vertex>
}`,ZM=`uniform vec3 diffuse;
uniform float opacity;
#ifndef FLAT_SHADED
	varying vec3 vNormal;
#endif
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <fog_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	#ifdef USE_LIGHTMAP
		vec4 lightMapTexel = texture2D( lightMap, vLightMapUv );
		reflectedLight.indirectDiffuse += lightMapTexel.rgb * lightMapIntensity * RECIPROCAL_PI;
	#else
		reflectedLight.indirectDiffuse += vec3( 1.0 );
	#endif
	#include <aomap_fragment>
	reflectedLight.indirectDiffuse *= diffuseColor.rgb;
	vec3 outgoingLight = reflectedLight.indirectDiffuse;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,JM=`#define LAMBERT
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,KM=`#define LAMBERT
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_lambert_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_lambert_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,jM=`#define MATCAP
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <color_pars_vertex>
#include <displacementmap_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
	vViewPosition = - mvPosition.xyz;
}`,QM=`#define MATCAP
uniform vec3 diffuse;
uniform float opacity;
uniform sampler2D matcap;
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	vec3 viewDir = normalize( vViewPosition );
	vec3 x = normalize( vec3( viewDir.z, 0.0, - viewDir.x ) );
	vec3 y = cross( viewDir, x );
	vec2 uv = vec2( dot( x, normal ), dot( y, normal ) ) * 0.495 + 0.5;
	#ifdef USE_MATCAP
		vec4 matcapColor = texture2D( matcap, uv );
	#else
		vec4 matcapColor = vec4( vec3( mix( 0.2, 0.8, uv.y ) ), 1.0 );
	#endif
	vec3 outgoingLight = diffuseColor.rgb * matcapColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,tS=`#define NORMAL
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	vViewPosition = - mvPosition.xyz;
#endif
}`,eS=`#define NORMAL
uniform float opacity;
#if defined( FLAT_SHADED ) || defined( USE_BUMPMAP ) || defined( USE_NORMALMAP_TANGENTSPACE )
	varying vec3 vViewPosition;
#endif
#include <uv_pars_fragment>
#include <normal_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( 0.0, 0.0, 0.0, opacity );
	#include <clipping_planes_fragment>
	#include <logdepthbuf_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	gl_FragColor = vec4( normalize( normal ) * 0.5 + 0.5, diffuseColor.a );
	#ifdef OPAQUE
		gl_FragColor.a = 1.0;
	#endif
}`,nS=`#define PHONG
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <envmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <envmap_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,iS=`#define PHONG
uniform vec3 diffuse;
uniform vec3 emissive;
uniform vec3 specular;
uniform float shininess;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_phong_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <specularmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <specularmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_phong_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + reflectedLight.directSpecular + reflectedLight.indirectSpecular + totalEmissiveRadiance;
	#include <envmap_fragment>
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,sS=`#define STANDARD
varying vec3 vViewPosition;
#ifdef USE_TRANSMISSION
	varying vec3 vWorldPosition;
#endif
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
#ifdef USE_TRANSMISSION
	vWorldPosition = worldPosition.xyz;
#endif
}`,rS=`#define STANDARD
#ifdef PHYSICAL
	#define IOR
	#define USE_SPECULAR
#endif
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float roughness;
uniform float metalness;
uniform float opacity;
#ifdef IOR
	uniform float ior;
#endif
#ifdef USE_SPECULAR
	uniform float specularIntensity;
	uniform vec3 specularColor;
	#ifdef USE_SPECULAR_COLORMAP
		uniform sampler2D specularColorMap;
	#endif
	#ifdef USE_SPECULAR_INTENSITYMAP
		uniform sampler2D specularIntensityMap;
	#endif
#endif
#ifdef USE_CLEARCOAT
	uniform float clearcoat;
	uniform float clearcoatRoughness;
#endif
#ifdef USE_DIFFUSE_ROUGHNESS
	uniform float diffuseRoughness;
	#ifdef USE_DIFFUSE_ROUGHNESSMAP
		uniform sampler2D diffuseRoughnessMap;
	#endif
#endif
#ifdef USE_DISPERSION
	uniform float dispersion;
#endif
#ifdef USE_RETROREFLECTION
	uniform float retroreflectivity;
#endif
#ifdef USE_IRIDESCENCE
	uniform float iridescence;
	uniform float iridescenceIOR;
	uniform float iridescenceThicknessMinimum;
	uniform float iridescenceThicknessMaximum;
#endif
#ifdef USE_SHEEN
	uniform vec3 sheenColor;
	uniform float sheenRoughness;
	#ifdef USE_SHEEN_COLORMAP
		uniform sampler2D sheenColorMap;
	#endif
	#ifdef USE_SHEEN_ROUGHNESSMAP
		uniform sampler2D sheenRoughnessMap;
	#endif
#endif
#ifdef USE_ANISOTROPY
	uniform vec2 anisotropyVector;
	#ifdef USE_ANISOTROPYMAP
		uniform sampler2D anisotropyMap;
	#endif
#endif
varying vec3 vViewPosition;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <iridescence_fragment>
#include <envmap_common_pars_fragment>
#include <envmap_physical_pars_fragment>
#include <fog_pars_fragment>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_physical_pars_fragment>
#include <transmission_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <clearcoat_pars_fragment>
#include <iridescence_pars_fragment>
#include <roughnessmap_pars_fragment>
#include <metalnessmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <roughnessmap_fragment>
	#include <metalnessmap_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <clearcoat_normal_fragment_begin>
	#include <clearcoat_normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_physical_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 totalDiffuse = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse;
	vec3 totalSpecular = reflectedLight.directSpecular + reflectedLight.indirectSpecular;
	#include <transmission_fragment>
	vec3 outgoingLight = totalDiffuse + totalSpecular + totalEmissiveRadiance;
	#ifdef USE_SHEEN
 
		outgoingLight = outgoingLight + sheenSpecularDirect + sheenSpecularIndirect;
 
 	#endif
	#ifdef USE_CLEARCOAT
		float dotNVcc = saturate( dot( geometryClearcoatNormal, geometryViewDir ) );
		vec3 Fcc = F_Schlick( material.clearcoatF0, material.clearcoatF90, dotNVcc );
		outgoingLight = outgoingLight * ( 1.0 - material.clearcoat * Fcc ) + ( clearcoatSpecularDirect + clearcoatSpecularIndirect ) * material.clearcoat;
	#endif
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,oS=`#define TOON
varying vec3 vViewPosition;
#include <common>
#include <batching_pars_vertex>
#include <uv_pars_vertex>
#include <displacementmap_pars_vertex>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <normal_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <shadowmap_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <normal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <displacementmap_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	vViewPosition = - mvPosition.xyz;
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,aS=`#define TOON
uniform vec3 diffuse;
uniform vec3 emissive;
uniform float opacity;
#include <common>
#include <dithering_pars_fragment>
#include <color_pars_fragment>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <aomap_pars_fragment>
#include <lightmap_pars_fragment>
#include <emissivemap_pars_fragment>
#include <gradientmap_pars_fragment>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <normal_pars_fragment>
#include <lights_toon_pars_fragment>
#include <shadowmap_pars_fragment>
#include <bumpmap_pars_fragment>
#include <normalmap_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	ReflectedLight reflectedLight = ReflectedLight( vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ), vec3( 0.0 ) );
	vec3 totalEmissiveRadiance = emissive;
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <color_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	#include <normal_fragment_begin>
	#include <normal_fragment_maps>
	#include <emissivemap_fragment>
	#include <lights_toon_fragment>
	#include <lights_fragment_begin>
	#include <lights_fragment_maps>
	#include <lights_fragment_end>
	#include <aomap_fragment>
	vec3 outgoingLight = reflectedLight.directDiffuse + reflectedLight.indirectDiffuse + totalEmissiveRadiance;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
	#include <dithering_fragment>
}`,lS=`uniform float size;
uniform float scale;
#include <common>
#include <color_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
#ifdef USE_POINTS_UV
	varying vec2 vUv;
	uniform mat3 uvTransform;
#endif
void main() {
	#ifdef USE_POINTS_UV
		vUv = ( uvTransform * vec3( uv, 1 ) ).xy;
	#endif
	#include <color_vertex>
	#include <morphinstance_vertex>
	#include <morphcolor_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <project_vertex>
	gl_PointSize = size;
	#ifdef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) gl_PointSize *= ( scale / - mvPosition.z );
	#endif
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <worldpos_vertex>
	#include <fog_vertex>
}`,cS=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <color_pars_fragment>
#include <map_particle_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_particle_fragment>
	#include <color_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,uS=`#include <common>
#include <batching_pars_vertex>
#include <fog_pars_vertex>
#include <morphtarget_pars_vertex>
#include <skinning_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <shadowmap_pars_vertex>
void main() {
	#include <batching_vertex>
	#include <beginnormal_vertex>
	#include <morphinstance_vertex>
	#include <morphnormal_vertex>
	#include <skinbase_vertex>
	#include <skinnormal_vertex>
	#include <defaultnormal_vertex>
	#include <begin_vertex>
	#include <morphtarget_vertex>
	#include <skinning_vertex>
	#include <project_vertex>
	#include <logdepthbuf_vertex>
	#include <worldpos_vertex>
	#include <shadowmap_vertex>
	#include <fog_vertex>
}`,hS=`uniform vec3 color;
uniform float opacity;
#include <common>
#include <fog_pars_fragment>
#include <bsdfs>
#include <lights_pars_begin>
#include <logdepthbuf_pars_fragment>
#include <shadowmap_pars_fragment>
#include <shadowmask_pars_fragment>
void main() {
	#include <logdepthbuf_fragment>
	gl_FragColor = vec4( color, opacity * ( 1.0 - getShadowMask() ) );
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
	#include <premultiplied_alpha_fragment>
}`,fS=`uniform float rotation;
uniform vec2 center;
#include <common>
#include <uv_pars_vertex>
#include <fog_pars_vertex>
#include <logdepthbuf_pars_vertex>
#include <clipping_planes_pars_vertex>
void main() {
	#include <uv_vertex>
	vec4 mvPosition = modelViewMatrix[ 3 ];
	vec2 scale = vec2( length( modelMatrix[ 0 ].xyz ), length( modelMatrix[ 1 ].xyz ) );
	#ifndef USE_SIZEATTENUATION
		bool isPerspective = isPerspectiveMatrix( projectionMatrix );
		if ( isPerspective ) scale *= - mvPosition.z;
	#endif
	vec2 alignedPosition = ( position.xy - ( center - vec2( 0.5 ) ) ) * scale;
	vec2 rotatedPosition;
	rotatedPosition.x = cos( rotation ) * alignedPosition.x - sin( rotation ) * alignedPosition.y;
	rotatedPosition.y = sin( rotation ) * alignedPosition.x + cos( rotation ) * alignedPosition.y;
	mvPosition.xy += rotatedPosition;
	gl_Position = projectionMatrix * mvPosition;
	#include <logdepthbuf_vertex>
	#include <clipping_planes_vertex>
	#include <fog_vertex>
}`,dS=`uniform vec3 diffuse;
uniform float opacity;
#include <common>
#include <uv_pars_fragment>
#include <map_pars_fragment>
#include <alphamap_pars_fragment>
#include <alphatest_pars_fragment>
#include <alphahash_pars_fragment>
#include <fog_pars_fragment>
#include <logdepthbuf_pars_fragment>
#include <clipping_planes_pars_fragment>
void main() {
	vec4 diffuseColor = vec4( diffuse, opacity );
	#include <clipping_planes_fragment>
	vec3 outgoingLight = vec3( 0.0 );
	#include <logdepthbuf_fragment>
	#include <map_fragment>
	#include <alphamap_fragment>
	#include <alphatest_fragment>
	#include <alphahash_fragment>
	outgoingLight = diffuseColor.rgb;
	#include <opaque_fragment>
	#include <tonemapping_fragment>
	#include <colorspace_fragment>
	#include <fog_fragment>
}`,Xt={alphahash_fragment:Ux,alphahash_pars_fragment:Fx,alphamap_fragment:Ox,alphamap_pars_fragment:kx,alphatest_fragment:Bx,alphatest_pars_fragment:zx,aomap_fragment:Vx,aomap_pars_fragment:Gx,batching_pars_vertex:Hx,batching_vertex:Wx,begin_vertex:Xx,beginnormal_vertex:qx,bsdfs:$x,iridescence_fragment:Yx,bumpmap_pars_fragment:Zx,clipping_planes_fragment:Jx,clipping_planes_pars_fragment:Kx,clipping_planes_pars_vertex:jx,clipping_planes_vertex:Qx,color_fragment:tb,color_pars_fragment:eb,color_pars_vertex:nb,color_vertex:ib,common:sb,defaultnormal_vertex:rb,displacementmap_pars_vertex:ob,displacementmap_vertex:ab,emissivemap_fragment:lb,emissivemap_pars_fragment:cb,colorspace_fragment:ub,colorspace_pars_fragment:hb,envmap_fragment:fb,envmap_common_pars_fragment:db,envmap_pars_fragment:pb,envmap_pars_vertex:mb,envmap_physical_pars_fragment:Ab,envmap_vertex:gb,fog_vertex:_b,fog_pars_vertex:vb,fog_fragment:yb,fog_pars_fragment:xb,gradientmap_pars_fragment:bb,lightmap_pars_fragment:Mb,lights_lambert_fragment:Sb,lights_lambert_pars_fragment:wb,lights_pars_begin:Tb,lights_toon_fragment:Eb,lights_toon_pars_fragment:Cb,lights_phong_fragment:Rb,lights_phong_pars_fragment:Pb,lights_physical_fragment:Ib,lights_physical_pars_fragment:Db,lights_fragment_begin:Lb,lights_fragment_maps:Nb,lights_fragment_end:Ub,lightprobes_pars_fragment:Fb,logdepthbuf_fragment:Ob,logdepthbuf_pars_fragment:kb,logdepthbuf_pars_vertex:Bb,logdepthbuf_vertex:zb,map_fragment:Vb,map_pars_fragment:Gb,map_particle_fragment:Hb,map_particle_pars_fragment:Wb,metalnessmap_fragment:Xb,metalnessmap_pars_fragment:qb,morphinstance_vertex:$b,morphcolor_vertex:Yb,morphnormal_vertex:Zb,morphtarget_pars_vertex:Jb,morphtarget_vertex:Kb,normal_fragment_begin:jb,normal_fragment_maps:Qb,normal_pars_fragment:tM,normal_pars_vertex:eM,normal_vertex:nM,normalmap_pars_fragment:iM,clearcoat_normal_fragment_begin:sM,clearcoat_normal_fragment_maps:rM,clearcoat_pars_fragment:oM,iridescence_pars_fragment:aM,opaque_fragment:lM,packing:cM,premultiplied_alpha_fragment:uM,project_vertex:hM,dithering_fragment:fM,dithering_pars_fragment:dM,roughnessmap_fragment:pM,roughnessmap_pars_fragment:mM,shadowmap_pars_fragment:gM,shadowmap_pars_vertex:_M,shadowmap_vertex:vM,shadowmask_pars_fragment:yM,skinbase_vertex:xM,skinning_pars_vertex:bM,skinning_vertex:MM,skinnormal_vertex:SM,specularmap_fragment:wM,specularmap_pars_fragment:TM,tonemapping_fragment:AM,tonemapping_pars_fragment:EM,transmission_fragment:CM,transmission_pars_fragment:RM,uv_pars_fragment:PM,uv_pars_vertex:IM,uv_vertex:DM,worldpos_vertex:LM,background_vert:NM,background_frag:UM,backgroundCube_vert:FM,backgroundCube_frag:OM,cube_vert:kM,cube_frag:BM,depth_vert:zM,depth_frag:VM,distance_vert:GM,distance_frag:HM,equirect_vert:WM,equirect_frag:XM,linedashed_vert:qM,linedashed_frag:$M,meshbasic_vert:YM,meshbasic_frag:ZM,meshlambert_vert:JM,meshlambert_frag:KM,meshmatcap_vert:jM,meshmatcap_frag:QM,meshnormal_vert:tS,meshnormal_frag:eS,meshphong_vert:nS,meshphong_frag:iS,meshphysical_vert:sS,meshphysical_frag:rS,meshtoon_vert:oS,meshtoon_frag:aS,points_vert:lS,points_frag:cS,shadow_vert:uS,shadow_frag:hS,sprite_vert:fS,sprite_frag:dS},_t={common:{diffuse:{value:new Vt(16777215)},opacity:{value:1},map:{value:null},mapTransform:{value:new kt},alphaMap:{value:null},alphaMapTransform:{value:new kt},alphaTest:{value:0}},specularmap:{specularMap:{value:null},specularMapTransform:{value:new kt}},envmap:{envMap:{value:null},envMapRotation:{value:new kt},reflectivity:{value:1},ior:{value:1.5},refractionRatio:{value:.98},dfgLUT:{value:null}},aomap:{aoMap:{value:null},aoMapIntensity:{value:1},aoMapTransform:{value:new kt}},lightmap:{lightMap:{value:null},lightMapIntensity:{value:1},lightMapTransform:{value:new kt}},bumpmap:{bumpMap:{value:null},bumpMapTransform:{value:new kt},bumpScale:{value:1}},normalmap:{normalMap:{value:null},normalMapTransform:{value:new kt},normalScale:{value:new rt(1,1)}},displacementmap:{displacementMap:{value:null},displacementMapTransform:{value:new kt},displacementScale:{value:1},displacementBias:{value:0}},emissivemap:{emissiveMap:{value:null},emissiveMapTransform:{value:new kt}},metalnessmap:{metalnessMap:{value:null},metalnessMapTransform:{value:new kt}},roughnessmap:{roughnessMap:{value:null},roughnessMapTransform:{value:new kt}},gradientmap:{gradientMap:{value:null}},fog:{fogDensity:{value:25e-5},fogNear:{value:1},fogFar:{value:2e3},fogColor:{value:new Vt(16777215)}},lights:{ambientLightColor:{value:[]},lightProbe:{value:[]},sunLights:{value:[],properties:{direction:{},color:{}}},sunLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},sunShadowMatrix:{value:[]},sunShadowCascade:{value:[]},directionalLights:{value:[],properties:{direction:{},color:{}}},directionalLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},directionalShadowMatrix:{value:[]},spotLights:{value:[],properties:{color:{},position:{},direction:{},distance:{},coneCos:{},penumbraCos:{},decay:{}}},spotLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{}}},spotLightMap:{value:[]},spotLightMatrix:{value:[]},pointLights:{value:[],properties:{color:{},position:{},decay:{},distance:{}}},pointLightShadows:{value:[],properties:{shadowIntensity:1,shadowBias:{},shadowNormalBias:{},shadowRadius:{},shadowMapSize:{},shadowCameraNear:{},shadowCameraFar:{}}},pointShadowMatrix:{value:[]},hemisphereLights:{value:[],properties:{direction:{},skyColor:{},groundColor:{}}},rectAreaLights:{value:[],properties:{color:{},position:{},width:{},height:{}}},ltc_1:{value:null},ltc_2:{value:null},probesSH:{value:[]},probesMin:{value:[]},probesMax:{value:[]},probesResolution:{value:[]}},points:{diffuse:{value:new Vt(16777215)},opacity:{value:1},size:{value:1},scale:{value:1},map:{value:null},alphaMap:{value:null},alphaMapTransform:{value:new kt},alphaTest:{value:0},uvTransform:{value:new kt}},sprite:{diffuse:{value:new Vt(16777215)},opacity:{value:1},center:{value:new rt(.5,.5)},rotation:{value:0},map:{value:null},mapTransform:{value:new kt},alphaMap:{value:null},alphaMapTransform:{value:new kt},alphaTest:{value:0}}},gi={basic:{uniforms:hn([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.fog]),vertexShader:Xt.meshbasic_vert,fragmentShader:Xt.meshbasic_frag},lambert:{uniforms:hn([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,_t.lights,{emissive:{value:new Vt(0)},envMapIntensity:{value:1}}]),vertexShader:Xt.meshlambert_vert,fragmentShader:Xt.meshlambert_frag},phong:{uniforms:hn([_t.common,_t.specularmap,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,_t.lights,{emissive:{value:new Vt(0)},specular:{value:new Vt(1118481)},shininess:{value:30},envMapIntensity:{value:1}}]),vertexShader:Xt.meshphong_vert,fragmentShader:Xt.meshphong_frag},standard:{uniforms:hn([_t.common,_t.envmap,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.roughnessmap,_t.metalnessmap,_t.fog,_t.lights,{emissive:{value:new Vt(0)},roughness:{value:1},metalness:{value:0},envMapIntensity:{value:1}}]),vertexShader:Xt.meshphysical_vert,fragmentShader:Xt.meshphysical_frag},toon:{uniforms:hn([_t.common,_t.aomap,_t.lightmap,_t.emissivemap,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.gradientmap,_t.fog,_t.lights,{emissive:{value:new Vt(0)}}]),vertexShader:Xt.meshtoon_vert,fragmentShader:Xt.meshtoon_frag},matcap:{uniforms:hn([_t.common,_t.bumpmap,_t.normalmap,_t.displacementmap,_t.fog,{matcap:{value:null}}]),vertexShader:Xt.meshmatcap_vert,fragmentShader:Xt.meshmatcap_frag},points:{uniforms:hn([_t.points,_t.fog]),vertexShader:Xt.points_vert,fragmentShader:Xt.points_frag},dashed:{uniforms:hn([_t.common,_t.fog,{scale:{value:1},dashSize:{value:1},totalSize:{value:2}}]),vertexShader:Xt.linedashed_vert,fragmentShader:Xt.linedashed_frag},depth:{uniforms:hn([_t.common,_t.displacementmap]),vertexShader:Xt.depth_vert,fragmentShader:Xt.depth_frag},normal:{uniforms:hn([_t.common,_t.bumpmap,_t.normalmap,_t.displacementmap,{opacity:{value:1}}]),vertexShader:Xt.meshnormal_vert,fragmentShader:Xt.meshnormal_frag},sprite:{uniforms:hn([_t.sprite,_t.fog]),vertexShader:Xt.sprite_vert,fragmentShader:Xt.sprite_frag},background:{uniforms:{uvTransform:{value:new kt},t2D:{value:null},backgroundIntensity:{value:1}},vertexShader:Xt.background_vert,fragmentShader:Xt.background_frag},backgroundCube:{uniforms:{envMap:{value:null},backgroundBlurriness:{value:0},backgroundIntensity:{value:1},backgroundRotation:{value:new kt}},vertexShader:Xt.backgroundCube_vert,fragmentShader:Xt.backgroundCube_frag},cube:{uniforms:{tCube:{value:null},tFlip:{value:-1},opacity:{value:1}},vertexShader:Xt.cube_vert,fragmentShader:Xt.cube_frag},equirect:{uniforms:{tEquirect:{value:null}},vertexShader:Xt.equirect_vert,fragmentShader:Xt.equirect_frag},distance:{uniforms:hn([_t.common,_t.displacementmap,{referencePosition:{value:new N},nearDistance:{value:1},farDistance:{value:1e3}}]),vertexShader:Xt.distance_vert,fragmentShader:Xt.distance_frag},shadow:{uniforms:hn([_t.lights,_t.fog,{color:{value:new Vt(0)},opacity:{value:1}}]),vertexShader:Xt.shadow_vert,fragmentShader:Xt.shadow_frag}};gi.physical={uniforms:hn([gi.standard.uniforms,{clearcoat:{value:0},clearcoatMap:{value:null},clearcoatMapTransform:{value:new kt},clearcoatNormalMap:{value:null},clearcoatNormalMapTransform:{value:new kt},clearcoatNormalScale:{value:new rt(1,1)},clearcoatRoughness:{value:0},clearcoatRoughnessMap:{value:null},clearcoatRoughnessMapTransform:{value:new kt},diffuseRoughness:{value:0},diffuseRoughnessMap:{value:null},diffuseRoughnessMapTransform:{value:new kt},dispersion:{value:0},retroreflectivity:{value:0},iridescence:{value:0},iridescenceMap:{value:null},iridescenceMapTransform:{value:new kt},iridescenceIOR:{value:1.3},iridescenceThicknessMinimum:{value:100},iridescenceThicknessMaximum:{value:400},iridescenceThicknessMap:{value:null},iridescenceThicknessMapTransform:{value:new kt},sheen:{value:0},sheenColor:{value:new Vt(0)},sheenColorMap:{value:null},sheenColorMapTransform:{value:new kt},sheenRoughness:{value:1},sheenRoughnessMap:{value:null},sheenRoughnessMapTransform:{value:new kt},transmission:{value:0},transmissionMap:{value:null},transmissionMapTransform:{value:new kt},transmissionSamplerSize:{value:new rt},transmissionSamplerMap:{value:null},thickness:{value:0},thicknessMap:{value:null},thicknessMapTransform:{value:new kt},attenuationDistance:{value:0},attenuationColor:{value:new Vt(0)},specularColor:{value:new Vt(1,1,1)},specularColorMap:{value:null},specularColorMapTransform:{value:new kt},specularIntensity:{value:1},specularIntensityMap:{value:null},specularIntensityMapTransform:{value:new kt},anisotropyVector:{value:new rt},anisotropyMap:{value:null},anisotropyMapTransform:{value:new kt}}]),vertexShader:Xt.meshphysical_vert,fragmentShader:Xt.meshphysical_frag};var Mu={r:0,b:0,g:0},pS=new ee,g0=new kt;g0.set(-1,0,0,0,1,0,0,0,1);function mS(n,t,e,i,s,r){let o=new Vt(0),a=s===!0?0:1,l,c,u=null,h=0,d=null;function f(y){let M=y.isScene===!0?y.background:null;if(M&&M.isTexture){let b=y.backgroundBlurriness>0;M=t.get(M,b)}return M}function g(y){let M=!1,b=f(y);b===null?_(o,a):b&&b.isColor&&(_(b,1),M=!0);let E=n.xr.getEnvironmentBlendMode();E==="additive"?e.buffers.color.setClear(0,0,0,1,r):E==="alpha-blend"&&e.buffers.color.setClear(0,0,0,0,r),(n.autoClear||M)&&(e.buffers.depth.setTest(!0),e.buffers.depth.setMask(!0),e.buffers.color.setMask(!0),n.clear(n.autoClearColor,n.autoClearDepth,n.autoClearStencil))}function v(y,M){let b=f(M);b&&b.isCubeTexture?(c===void 0&&(c=new Le(new Mn(1,1,1),new Ln({name:"BackgroundCubeMaterial",uniforms:Vs(gi.backgroundCube.uniforms),vertexShader:gi.backgroundCube.vertexShader,fragmentShader:gi.backgroundCube.fragmentShader,side:vn,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),c.geometry.deleteAttribute("normal"),c.geometry.deleteAttribute("uv"),c.onBeforeRender=function(E,A,x){this.matrixWorld.copyPosition(x.matrixWorld)},Object.defineProperty(c.material,"envMap",{get:function(){return this.uniforms.envMap.value}}),i.update(c)),c.material.uniforms.envMap.value=b,c.material.uniforms.backgroundBlurriness.value=M.backgroundBlurriness,c.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,c.material.uniforms.backgroundRotation.value.setFromMatrix4(pS.makeRotationFromEuler(M.backgroundRotation)).transpose(),b.isRenderTargetTexture===!1&&c.material.uniforms.backgroundRotation.value.premultiply(g0),c.material.toneMapped=Kt.getTransfer(b.colorSpace)!==ce,(u!==b||h!==b.version||d!==n.toneMapping)&&(c.material.needsUpdate=!0,u=b,h=b.version,d=n.toneMapping),c.layers.enableAll(),y.unshift(c,c.geometry,c.material,0,0,null)):b&&b.isTexture&&(l===void 0&&(l=new Le(new aa(2,2),new Ln({name:"BackgroundMaterial",uniforms:Vs(gi.background.uniforms),vertexShader:gi.background.vertexShader,fragmentShader:gi.background.fragmentShader,side:us,depthTest:!1,depthWrite:!1,fog:!1,allowOverride:!1})),l.geometry.deleteAttribute("normal"),Object.defineProperty(l.material,"map",{get:function(){return this.uniforms.t2D.value}}),i.update(l)),l.material.uniforms.t2D.value=b,l.material.uniforms.backgroundIntensity.value=M.backgroundIntensity,l.material.toneMapped=Kt.getTransfer(b.colorSpace)!==ce,b.matrixAutoUpdate===!0&&b.updateMatrix(),l.material.uniforms.uvTransform.value.copy(b.matrix),(u!==b||h!==b.version||d!==n.toneMapping)&&(l.material.needsUpdate=!0,u=b,h=b.version,d=n.toneMapping),l.layers.enableAll(),y.unshift(l,l.geometry,l.material,0,0,null))}function _(y,M){y.getRGB(Mu,$f(n)),e.buffers.color.setClear(Mu.r,Mu.g,Mu.b,M,r)}function m(){c!==void 0&&(c.geometry.dispose(),c.material.dispose(),c=void 0),l!==void 0&&(l.geometry.dispose(),l.material.dispose(),l=void 0)}return{getClearColor:function(){return o},setClearColor:function(y,M=1){o.set(y),a=M,_(o,a)},getClearAlpha:function(){return a},setClearAlpha:function(y){a=y,_(o,a)},render:g,addToRenderList:v,dispose:m}}function gS(n,t){let e=n.getParameter(n.MAX_VERTEX_ATTRIBS),i={},s=d(null),r=s,o=!1;function a(P,F,B,I,W){let X=!1,k=h(P,I,B,F);r!==k&&(r=k,c(r.object)),X=f(P,I,B,W),X&&g(P,I,B,W),W!==null&&t.update(W,n.ELEMENT_ARRAY_BUFFER),(X||o)&&(o=!1,b(P,F,B,I),W!==null&&n.bindBuffer(n.ELEMENT_ARRAY_BUFFER,t.get(W).buffer))}function l(){return n.createVertexArray()}function c(P){return n.bindVertexArray(P)}function u(P){return n.deleteVertexArray(P)}function h(P,F,B,I){let W=I.wireframe===!0,X=i[F.id];X===void 0&&(X={},i[F.id]=X);let k=P.isInstancedMesh===!0?P.id:0,Q=X[k];Q===void 0&&(Q={},X[k]=Q);let G=Q[B.id];G===void 0&&(G={},Q[B.id]=G);let tt=G[W];return tt===void 0&&(tt=d(l()),G[W]=tt),tt}function d(P){let F=[],B=[],I=[];for(let W=0;W<e;W++)F[W]=0,B[W]=0,I[W]=0;return{geometry:null,program:null,wireframe:!1,newAttributes:F,enabledAttributes:B,attributeDivisors:I,object:P,attributes:{},index:null}}function f(P,F,B,I){let W=r.attributes,X=F.attributes,k=0,Q=B.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=W[G],bt=X[G];if(bt===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(bt=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(bt=P.instanceColor)),et===void 0||et.attribute!==bt||bt&&et.data!==bt.data)return!0;k++}return r.attributesNum!==k||r.index!==I}function g(P,F,B,I){let W={},X=F.attributes,k=0,Q=B.getAttributes();for(let G in Q)if(Q[G].location>=0){let et=X[G];et===void 0&&(G==="instanceMatrix"&&P.instanceMatrix&&(et=P.instanceMatrix),G==="instanceColor"&&P.instanceColor&&(et=P.instanceColor));let bt={};bt.attribute=et,et&&et.data&&(bt.data=et.data),W[G]=bt,k++}r.attributes=W,r.attributesNum=k,r.index=I}function v(){let P=r.newAttributes;for(let F=0,B=P.length;F<B;F++)P[F]=0}function _(P){m(P,0)}function m(P,F){let B=r.newAttributes,I=r.enabledAttributes,W=r.attributeDivisors;B[P]=1,I[P]===0&&(n.enableVertexAttribArray(P),I[P]=1),W[P]!==F&&(n.vertexAttribDivisor(P,F),W[P]=F)}function y(){let P=r.newAttributes,F=r.enabledAttributes;for(let B=0,I=F.length;B<I;B++)F[B]!==P[B]&&(n.disableVertexAttribArray(B),F[B]=0)}function M(P,F,B,I,W,X,k){k===!0?n.vertexAttribIPointer(P,F,B,W,X):n.vertexAttribPointer(P,F,B,I,W,X)}function b(P,F,B,I){v();let W=I.attributes,X=B.getAttributes(),k=F.defaultAttributeValues;for(let Q in X){let G=X[Q];if(G.location>=0){let tt=W[Q];if(tt===void 0&&(Q==="instanceMatrix"&&P.instanceMatrix&&(tt=P.instanceMatrix),Q==="instanceColor"&&P.instanceColor&&(tt=P.instanceColor)),tt!==void 0){let et=tt.normalized,bt=tt.itemSize,Lt=t.get(tt);if(Lt===void 0)continue;let Z=Lt.buffer,dt=Lt.type,xt=Lt.bytesPerElement,Ct=dt===n.INT||dt===n.UNSIGNED_INT||tt.gpuType===Oc;if(tt.isInterleavedBufferAttribute){let mt=tt.data,Ot=mt.isInterleavedBuffer===!0?mt.stride:mt.itemSize,Pe=tt.offset;if(mt.isInstancedInterleavedBuffer||mt.isInstancedBufferAttribute){for(let Dt=0;Dt<G.locationSize;Dt++)m(G.location+Dt,mt.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=mt.meshPerAttribute*mt.count)}else for(let Dt=0;Dt<G.locationSize;Dt++)_(G.location+Dt);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let Dt=0;Dt<G.locationSize;Dt++)M(G.location+Dt,bt/G.locationSize,dt,et,Ot*xt,(Pe+bt/G.locationSize*Dt)*xt,Ct)}else{if(tt.isInstancedBufferAttribute){for(let mt=0;mt<G.locationSize;mt++)m(G.location+mt,tt.meshPerAttribute);P.isInstancedMesh!==!0&&I._maxInstanceCount===void 0&&(I._maxInstanceCount=tt.meshPerAttribute*tt.count)}else for(let mt=0;mt<G.locationSize;mt++)_(G.location+mt);n.bindBuffer(n.ARRAY_BUFFER,Z);for(let mt=0;mt<G.locationSize;mt++)M(G.location+mt,bt/G.locationSize,dt,et,bt*xt,bt/G.locationSize*mt*xt,Ct)}}else if(k!==void 0){let et=k[Q];if(et!==void 0)switch(et.length){case 2:n.vertexAttrib2fv(G.location,et);break;case 3:n.vertexAttrib3fv(G.location,et);break;case 4:n.vertexAttrib4fv(G.location,et);break;default:n.vertexAttrib1fv(G.location,et)}}}}y()}function E(){D();for(let P in i){let F=i[P];for(let B in F){let I=F[B];for(let W in I){let X=I[W];for(let k in X)u(X[k].object),delete X[k];delete I[W]}}delete i[P]}}function A(P){if(i[P.id]===void 0)return;let F=i[P.id];for(let B in F){let I=F[B];for(let W in I){let X=I[W];for(let k in X)u(X[k].object),delete X[k];delete I[W]}}delete i[P.id]}function x(P){for(let F in i){let B=i[F];for(let I in B){let W=B[I];if(W[P.id]===void 0)continue;let X=W[P.id];for(let k in X)u(X[k].object),delete X[k];delete W[P.id]}}}function T(P){for(let F in i){let B=i[F],I=P.isInstancedMesh===!0?P.id:0,W=B[I];if(W!==void 0){for(let X in W){let k=W[X];for(let Q in k)u(k[Q].object),delete k[Q];delete W[X]}delete B[I],Object.keys(B).length===0&&delete i[F]}}}function D(){R(),o=!0,r!==s&&(r=s,c(r.object))}function R(){s.geometry=null,s.program=null,s.wireframe=!1}return{setup:a,reset:D,resetDefaultState:R,dispose:E,releaseStatesOfGeometry:A,releaseStatesOfObject:T,releaseStatesOfProgram:x,initAttributes:v,enableAttribute:_,disableUnusedAttributes:y}}function _S(n,t,e){let i;function s(l){i=l}function r(l,c){n.drawArrays(i,l,c),e.update(c,i,1)}function o(l,c,u){u!==0&&(n.drawArraysInstanced(i,l,c,u),e.update(c,i,u))}function a(l,c,u){if(u===0)return;t.get("WEBGL_multi_draw").multiDrawArraysWEBGL(i,l,0,c,0,u);let d=0;for(let f=0;f<u;f++)d+=c[f];e.update(d,i,1)}this.setMode=s,this.render=r,this.renderInstances=o,this.renderMultiDraw=a}function vS(n,t,e,i){let s;function r(){if(s!==void 0)return s;if(t.has("EXT_texture_filter_anisotropic")===!0){let x=t.get("EXT_texture_filter_anisotropic");s=n.getParameter(x.MAX_TEXTURE_MAX_ANISOTROPY_EXT)}else s=0;return s}function o(x){return!(x!==si&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_FORMAT))}function a(x){let T=x===ii&&(t.has("EXT_color_buffer_half_float")||t.has("EXT_color_buffer_float"));return!(x!==Sn&&x!==Xn&&!T&&i.convert(x)!==n.getParameter(n.IMPLEMENTATION_COLOR_READ_TYPE))}function l(x){if(x==="highp"){if(n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.HIGH_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.HIGH_FLOAT).precision>0)return"highp";x="mediump"}return x==="mediump"&&n.getShaderPrecisionFormat(n.VERTEX_SHADER,n.MEDIUM_FLOAT).precision>0&&n.getShaderPrecisionFormat(n.FRAGMENT_SHADER,n.MEDIUM_FLOAT).precision>0?"mediump":"lowp"}let c=e.precision!==void 0?e.precision:"highp",u=l(c);u!==c&&(It("WebGLRenderer:",c,"not supported, using",u,"instead."),c=u);let h=e.reversedDepthBuffer===!0&&t.has("EXT_clip_control"),d=e.logarithmicDepthBuffer===!0&&h===!1;e.reversedDepthBuffer===!0&&h===!1&&It("WebGLRenderer: Unable to use reversed depth buffer due to missing EXT_clip_control extension. Fallback to default depth buffer."),e.logarithmicDepthBuffer===!0&&h===!0&&It("WebGLRenderer: Logarithmic depth buffer is ignored when reversed depth buffer is enabled.");let f=n.getParameter(n.MAX_TEXTURE_IMAGE_UNITS),g=n.getParameter(n.MAX_VERTEX_TEXTURE_IMAGE_UNITS),v=n.getParameter(n.MAX_TEXTURE_SIZE),_=n.getParameter(n.MAX_CUBE_MAP_TEXTURE_SIZE),m=n.getParameter(n.MAX_VERTEX_ATTRIBS),y=n.getParameter(n.MAX_VERTEX_UNIFORM_VECTORS),M=n.getParameter(n.MAX_VARYING_VECTORS),b=n.getParameter(n.MAX_FRAGMENT_UNIFORM_VECTORS),E=n.getParameter(n.MAX_SAMPLES),A=n.getParameter(n.SAMPLES);return{isWebGL2:!0,getMaxAnisotropy:r,getMaxPrecision:l,textureFormatReadable:o,textureTypeReadable:a,precision:c,logarithmicDepthBuffer:d,reversedDepthBuffer:h,maxTextures:f,maxVertexTextures:g,maxTextureSize:v,maxCubemapSize:_,maxAttributes:m,maxVertexUniforms:y,maxVaryings:M,maxFragmentUniforms:b,maxSamples:E,samples:A}}function yS(n){let t=this,e=null,i=0,s=!1,r=!1,o=new Pn,a=new kt,l={value:null,needsUpdate:!1};this.uniform=l,this.numPlanes=0,this.numIntersection=0,this.init=function(h,d){let f=h.length!==0||d||i!==0||s;return s=d,i=h.length,f},this.beginShadows=function(){r=!0,u(null)},this.endShadows=function(){r=!1},this.setGlobalState=function(h,d){e=u(h,d,0)},this.setState=function(h,d,f){let g=h.clippingPlanes,v=h.clipIntersection,_=h.clipShadows,m=n.get(h);if(!s||g===null||g.length===0||r&&!_)r?u(null):c();else{let y=r?0:i,M=y*4,b=m.clippingState||null;l.value=b,b=u(g,d,M,f);for(let E=0;E!==M;++E)b[E]=e[E];m.clippingState=b,this.numIntersection=v?this.numPlanes:0,this.numPlanes+=y}};function c(){l.value!==e&&(l.value=e,l.needsUpdate=i>0),t.numPlanes=i,t.numIntersection=0}function u(h,d,f,g){let v=h!==null?h.length:0,_=null;if(v!==0){if(_=l.value,g!==!0||_===null){let m=f+v*4,y=d.matrixWorldInverse;a.getNormalMatrix(y),(_===null||_.length<m)&&(_=new Float32Array(m));for(let M=0,b=f;M!==v;++M,b+=4)o.copy(h[M]).applyMatrix4(y,a),o.normal.toArray(_,b),_[b+3]=o.constant}l.value=_,l.needsUpdate=!0}return t.numPlanes=v,t.numIntersection=0,_}}var Aa=class extends In{constructor(t=1,e={}){super(t,t,e),this.isWebGLCubeRenderTarget=!0;let i={width:t,height:t,depth:1},s=[i,i,i,i,i,i];this.texture=new Zo(s),this._setTextureOptions(e),this.texture.isRenderTargetTexture=!0}fromEquirectangularTexture(t,e){this.texture.type=e.type,this.texture.colorSpace=e.colorSpace,this.texture.generateMipmaps=e.generateMipmaps,this.texture.minFilter=e.minFilter,this.texture.magFilter=e.magFilter;let i={uniforms:{tEquirect:{value:null}},vertexShader:`

				varying vec3 vWorldDirection;

				vec3 transformDirection( in vec3 dir, in mat4 matrix ) {

					return normalize( ( matrix * vec4( dir, 0.0 ) ).xyz );

				}

				void main() {

					vWorldDirection = transformDirection( position, modelMatrix );

					#include <begin_vertex>
					#include <project_vertex>

				}
			`,fragmentShader:`

				uniform sampler2D tEquirect;

				varying vec3 vWorldDirection;

				#include <common>

				void main() {

					vec3 direction = normalize( vWorldDirection );

					vec2 sampleUV = equirectUv( direction );

					gl_FragColor = texture2D( tEquirect, sampleUV );

				}
			`},s=new Mn(5,5,5),r=new Ln({name:"CubemapFromEquirect",uniforms:Vs(i.uniforms),vertexShader:i.vertexShader,fragmentShader:i.fragmentShader,side:vn,blending:Fs});r.uniforms.tEquirect.value=e;let o=new Le(s,r),a=e.minFilter;return e.minFilter===Oi&&(e.minFilter=_n),new Br(1,10,this).update(t,o),e.minFilter=a,o.geometry.dispose(),o.material.dispose(),this}clear(t,e=!0,i=!0,s=!0){let r=t.getRenderTarget();for(let o=0;o<6;o++)t.setRenderTarget(this,o),t.clear(e,i,s);t.setRenderTarget(r)}},Yg=256,xS=3,bS=20,_0=256,v0=16,MS=3,SS=new N,wS=new Vt,wu=class n{constructor(t){this._renderer=t,this._cubeSize=0,this._sourceTarget=null,this._cubeCamera=new Br(1,10,null),this._boxMesh=new Le(new Mn(5,5,5),null),this._cubemapMaterial=null,this._equirectMaterial=null,this._blurMaterial=null,this._ggxMaterial=null,this._integrationMaterial=null}fromScene(t,e=0,i=.1,s=100,r={}){let{size:o=256,position:a=SS}=r,l=this._renderer;this._setSize(o);let c=this._allocateTarget(),u=this._getSourceTarget(!0);e>0&&(u.texture.mipmapsAutoUpdate=!1);let h=l.autoClear,d=l.autoClearColor,f=l.autoClearDepth,g=l.autoClearStencil,v=t.background;l.autoClear=!0,l.autoClearColor=!0,l.autoClearDepth=!0,l.autoClearStencil=!0,v===null&&(t.background=l.getClearColor(wS));let _=new Br(i,s,u);return _.position.copy(a),_.update(l,t),l.autoClear=h,l.autoClearColor=d,l.autoClearDepth=f,l.autoClearStencil=g,t.background=v,e>0&&(u.texture.mipmapsAutoUpdate=!0,this._blur(c,e)),this._applyPMREM(c),c}fromEquirectangular(t,e=null){return this._fromTexture(t,e)}fromCubemap(t,e=null){return this._fromTexture(t,e)}compileCubemapShader(){this._cubemapMaterial===null&&(this._cubemapMaterial=Kg(),this._compileMaterial(this._cubemapMaterial))}compileEquirectangularShader(){this._equirectMaterial===null&&(this._equirectMaterial=Jg(),this._compileMaterial(this._equirectMaterial))}dispose(){this._sourceTarget!==null&&this._sourceTarget.dispose(),this._cubemapMaterial!==null&&this._cubemapMaterial.dispose(),this._equirectMaterial!==null&&this._equirectMaterial.dispose(),this._blurMaterial!==null&&this._blurMaterial.dispose(),this._ggxMaterial!==null&&this._ggxMaterial.dispose(),this._integrationMaterial!==null&&this._integrationMaterial.dispose(),this._boxMesh.geometry.dispose()}static lodToRoughness(t,e){return e>0?1-Math.sqrt(1-t/e):0}_setSize(t){this._cubeSize=Math.max(Yg,Wf(t))}_fromTexture(t,e){t.mapping===ks||t.mapping===Hr?this._setSize(t.image.length===0?Yg:t.image[0].width||t.image[0].image.width):this._setSize(t.image.width/4);let i=e||this._allocateTarget();return this._textureToCubemap(t),this._applyPMREM(i),i}_allocateTarget(){let t=this._cubeSize,e=Zg(t,!1,!1),i=Math.log2(t)-xS;for(let s=0;s<=i;s++)e.texture.mipmaps.push({width:t>>s,height:t>>s});return e.texture.name="PMREM",e.texture.isPMREMTexture=!0,e}_getSourceTarget(t=!1){let e=this._cubeSize,i=this._sourceTarget;return(i===null||i.width!==e||t&&i.depthBuffer===!1)&&(i!==null&&i.dispose(),this._sourceTarget=Zg(e,!0,t)),this._sourceTarget}_compileMaterial(t){this._boxMesh.material=t,this._renderer.compile(this._boxMesh,this._cubeCamera.children[0])}_renderCube(t,e,i){let s=this._boxMesh,r=this._cubeCamera;s.material=i,r.renderTarget=t,r.activeMipmapLevel=e;let o=t.width>>e;t.viewport.set(0,0,o,o),r.update(this._renderer,s),t.viewport.set(0,0,t.width,t.height)}_textureToCubemap(t){let e;t.mapping===ks||t.mapping===Hr?(this._cubemapMaterial===null&&(this._cubemapMaterial=Kg()),e=this._cubemapMaterial,e.uniforms.flipEnvMap.value=t.isRenderTargetTexture===!1?-1:1):(this._equirectMaterial===null&&(this._equirectMaterial=Jg()),e=this._equirectMaterial),e.uniforms.envMap.value=t,this._renderCube(this._getSourceTarget(),0,e)}_applyPMREM(t){this._ggxMaterial===null&&(this._ggxMaterial=TS(),this._integrationMaterial=AS());let e=this._cubeSize,i=t.texture.mipmaps.length-1,s=this._ggxMaterial.uniforms;s.envMap.value=this._sourceTarget.texture;let r=this._integrationMaterial.uniforms;r.envMap.value=this._sourceTarget.texture,r.sourceLod.value=Math.log2(e/v0);for(let o=0;o<=i;o++){let a=n.lodToRoughness(o,i);if(o>i-MS)r.roughness.value=a,this._renderCube(t,o,this._integrationMaterial);else{let l=a>0?Math.log2(e)+.5*Math.log2(6/(_0*Math.pow(a,4)))+.5:0;s.roughness.value=a,s.lodBias.value=l,this._renderCube(t,o,this._ggxMaterial)}}}_blur(t,e){this._blurMaterial===null&&(this._blurMaterial=ES());let i=this._blurMaterial,s=i.uniforms,r=this._sourceTarget;s.sigma.value=Math.min(e,Math.PI)/Math.SQRT2,s.envMap.value=r.texture,this._renderCube(t,0,i),s.envMap.value=t.texture,this._renderCube(r,0,i)}};function Zg(n,t,e){return new Aa(n,{minFilter:Oi,generateMipmaps:t,type:ii,colorSpace:ko,depthBuffer:e})}function Ea(n,t,e){return new Ln({name:n,uniforms:t,vertexShader:Xt.cube_vert,fragmentShader:e,side:vn,blending:Fs,depthTest:!1,depthWrite:!1})}function TS(){return Ea("PMREMGGXConvolution",{envMap:{value:null},roughness:{value:0},lodBias:{value:0}},`

		#define GGX_SAMPLES ${_0}u

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float lodBias;

		#include <common>

		// Van der Corput radical inverse
		float radicalInverse_VdC( uint bits ) {

			bits = ( bits << 16u ) | ( bits >> 16u );
			bits = ( ( bits & 0x55555555u ) << 1u ) | ( ( bits & 0xAAAAAAAAu ) >> 1u );
			bits = ( ( bits & 0x33333333u ) << 2u ) | ( ( bits & 0xCCCCCCCCu ) >> 2u );
			bits = ( ( bits & 0x0F0F0F0Fu ) << 4u ) | ( ( bits & 0xF0F0F0F0u ) >> 4u );
			bits = ( ( bits & 0x00FF00FFu ) << 8u ) | ( ( bits & 0xFF00FF00u ) >> 8u );
			return float( bits ) * 2.3283064365386963e-10; // / 0x100000000

		}

		// Hammersley sequence
		vec2 hammersley( uint i, uint N ) {

			return vec2( float( i ) / float( N ), radicalInverse_VdC( i ) );

		}

		void main() {

			vec3 N = normalize( vWorldDirection );

			// For very low roughness, just sample the environment directly
			if ( roughness < 0.001 ) {

				gl_FragColor = vec4( textureLod( envMap, N, 0.0 ).rgb, 1.0 );
				return;

			}

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			// Tangent space basis for VNDF sampling
			vec3 up = abs( N.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, N ) );
			vec3 bitangent = cross( N, tangent );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			for ( uint i = 0u; i < GGX_SAMPLES; i ++ ) {

				vec2 Xi = hammersley( i, GGX_SAMPLES );

				// With V = N, sample the reflected direction directly.
				float invQ = 1.0 / ( 1.0 - Xi.x + alpha2 * Xi.x );
				float NdotL = ( 1.0 - Xi.x - alpha2 * Xi.x ) * invQ;

				if ( NdotL > 0.0 ) {

					float phi = 2.0 * PI * Xi.y;
					float sinTheta = 2.0 * alpha * sqrt( Xi.x * ( 1.0 - Xi.x ) ) * invQ;
					vec3 L = N * NdotL + ( tangent * cos( phi ) + bitangent * sin( phi ) ) * sinTheta;

					// Match the source mip to the sample's solid angle. The terms
					// independent of the sample are precomputed in lodBias.
					float d = alpha2 * invQ;
					float lod = max( log2( d ) + lodBias, 0.0 );

					// Weight by NdotL for the split-sum approximation
					prefilteredColor += textureLod( envMap, L, lod ).rgb * NdotL;
					totalWeight += NdotL;

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function AS(){return Ea("PMREMGGXIntegration",{envMap:{value:null},roughness:{value:0},sourceLod:{value:0},sourceSize:{value:v0}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float roughness;
		uniform float sourceLod;
		uniform int sourceSize;

		void main() {

			vec3 N = normalize( vWorldDirection );

			float alpha = roughness * roughness;
			float alpha2 = alpha * alpha;

			float texelSize = 2.0 / float( sourceSize );

			vec3 prefilteredColor = vec3( 0.0 );
			float totalWeight = 0.0;

			// Pair opposite texels: only the one in N's hemisphere contributes.
			for ( int face = 0; face < 3; face ++ ) {

				for ( int y = 0; y < sourceSize; y ++ ) {

					for ( int x = 0; x < sourceSize; x ++ ) {

						vec2 uv = ( vec2( x, y ) + 0.5 ) * texelSize - 1.0;
						vec3 texelDirection = face == 0 ? vec3( 1.0, uv ) : ( face == 1 ? vec3( uv.x, 1.0, uv.y ) : vec3( uv, 1.0 ) );

						float invDistance = inversesqrt( 1.0 + dot( uv, uv ) );
						float NdotL = dot( N, texelDirection );
						texelDirection *= NdotL < 0.0 ? - 1.0 : 1.0;
						NdotL = abs( NdotL ) * invDistance;

						// With V = N, NdotH squared is ( 1 + NdotL ) / 2. Common factors
						// in the GGX distribution and texel solid angle cancel when normalized.
						float d = 1.0 + alpha2 + ( alpha2 - 1.0 ) * NdotL;
						float weight = NdotL * invDistance * invDistance * invDistance / ( d * d );

						prefilteredColor += textureLod( envMap, texelDirection, sourceLod ).rgb * weight;
						totalWeight += weight;

					}

				}

			}

			gl_FragColor = vec4( prefilteredColor / totalWeight, 1.0 );

		}
	`)}function ES(){return Ea("PMREMSphericalGaussianBlur",{envMap:{value:null},sigma:{value:0}},`

		#define SAMPLES ${bS}
		#define GOLDEN_ANGLE 2.39996322973

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float sigma;

		#include <common>

		void main() {

			vec3 outputDirection = normalize( vWorldDirection );

			vec3 up = abs( outputDirection.z ) < 0.999 ? vec3( 0.0, 0.0, 1.0 ) : vec3( 1.0, 0.0, 0.0 );
			vec3 tangent = normalize( cross( up, outputDirection ) );
			vec3 bitangent = cross( outputDirection, tangent );

			// Truncate the kernel at three standard deviations or at the antipode.
			float thetaMax = min( 3.0 * sigma, PI );
			float truncation = 1.0 - exp( - 0.5 * thetaMax * thetaMax / ( sigma * sigma ) );

			vec3 accumColor = vec3( 0.0 );
			float accumWeight = 0.0;

			for ( int i = 0; i < SAMPLES; i ++ ) {

				// Stratified inverse-CDF sampling of the Gaussian, placed on a golden-angle spiral.
				float stratum = ( float( i ) + 0.5 ) / float( SAMPLES );
				float theta = sigma * sqrt( - 2.0 * log( 1.0 - stratum * truncation ) );
				float phi = float( i ) * GOLDEN_ANGLE;

				vec3 offset = cos( phi ) * tangent + sin( phi ) * bitangent;
				vec3 sampleDirection = cos( theta ) * outputDirection + sin( theta ) * offset;

				// Correct the planar sample density to solid angle.
				float weight = sin( theta ) / theta;

				accumColor += weight * textureLod( envMap, sampleDirection, 0.0 ).rgb;
				accumWeight += weight;

			}

			gl_FragColor = vec4( accumColor / accumWeight, 1.0 );

		}
	`)}function Jg(){return Ea("PMREMEquirectangularToCubemap",{envMap:{value:null}},`

		varying vec3 vWorldDirection;

		uniform sampler2D envMap;

		#include <common>

		void main() {

			// Average four subpixel samples to preserve small, bright features.
			vec3 direction = normalize( vWorldDirection );
			vec3 dx = dFdx( direction ) * 0.25;
			vec3 dy = dFdy( direction ) * 0.25;

			vec3 color = textureLod( envMap, equirectUv( normalize( direction - dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx - dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction - dx + dy ) ), 0.0 ).rgb;
			color += textureLod( envMap, equirectUv( normalize( direction + dx + dy ) ), 0.0 ).rgb;
			gl_FragColor = vec4( color * 0.25, 1.0 );

		}
	`)}function Kg(){return Ea("PMREMCubemapToCubemap",{envMap:{value:null},flipEnvMap:{value:-1}},`

		varying vec3 vWorldDirection;

		uniform samplerCube envMap;
		uniform float flipEnvMap;

		void main() {

			gl_FragColor = vec4( textureCube( envMap, vec3( flipEnvMap * vWorldDirection.x, vWorldDirection.yz ) ).rgb, 1.0 );

		}
	`)}function CS(n){let t=new WeakMap,e=new WeakMap,i=null;function s(d,f=!1){return d==null?null:f?o(d):r(d)}function r(d){if(d&&d.isTexture){let f=d.mapping;if(f===Nc||f===Uc)if(t.has(d)){let g=t.get(d).texture;return a(g,d.mapping)}else{let g=d.image;if(g&&g.height>0){let v=new Aa(g.height);return v.fromEquirectangularTexture(n,d),t.set(d,v),d.addEventListener("dispose",c),a(v.texture,d.mapping)}else return null}}return d}function o(d){if(d&&d.isTexture&&d.isPMREMTexture!==!0){let f=d.mapping,g=f===Nc||f===Uc,v=f===ks||f===Hr;if(g||v){let _=e.get(d),m=_!==void 0?_.texture.pmremVersion:0;if(d.isRenderTargetTexture&&d.pmremVersion!==m)return i===null&&(i=new wu(n)),_=g?i.fromEquirectangular(d,_):i.fromCubemap(d,_),_.texture.pmremVersion=d.pmremVersion,e.set(d,_),_.texture;if(_!==void 0)return _.texture;{let y=d.image;return g&&y&&y.height>0||v&&y&&l(y)?(i===null&&(i=new wu(n)),_=g?i.fromEquirectangular(d):i.fromCubemap(d),_.texture.pmremVersion=d.pmremVersion,e.set(d,_),d.addEventListener("dispose",u),_.texture):null}}}return d}function a(d,f){return f===Nc?d.mapping=ks:f===Uc&&(d.mapping=Hr),d}function l(d){let f=0,g=6;for(let v=0;v<g;v++)d[v]!==void 0&&f++;return f===g}function c(d){let f=d.target;f.removeEventListener("dispose",c);let g=t.get(f);g!==void 0&&(t.delete(f),g.dispose())}function u(d){let f=d.target;f.removeEventListener("dispose",u);let g=e.get(f);g!==void 0&&(e.delete(f),g.dispose())}function h(){t=new WeakMap,e=new WeakMap,i!==null&&(i.dispose(),i=null)}return{get:s,dispose:h}}function RS(n){let t={};function e(i){if(t[i]!==void 0)return t[i];let s=n.getExtension(i);return t[i]=s,s}return{has:function(i){return e(i)!==null},init:function(){e("EXT_color_buffer_float"),e("WEBGL_clip_cull_distance"),e("OES_texture_float_linear"),e("EXT_color_buffer_half_float"),e("WEBGL_multisampled_render_to_texture"),e("WEBGL_render_shared_exponent")},get:function(i){let s=e(i);return s===null&&Do("WebGLRenderer: "+i+" extension not supported."),s}}}function PS(n,t,e,i){let s={},r=new WeakMap,o=new FinalizationRegistry(g=>delete s[g]);function a(g){l(g.target)}function l(g){g.index!==null&&t.remove(g.index);for(let _ in g.attributes)t.remove(g.attributes[_]);g.removeEventListener("dispose",a),delete s[g.id],o.unregister(g);let v=r.get(g);v&&(t.remove(v),r.delete(g)),i.releaseStatesOfGeometry(g),g.isInstancedBufferGeometry===!0&&delete g._maxInstanceCount,e.memory.geometries--}function c(g,v){return s[v.id]!==void 0||(v.addEventListener("dispose",a),s[v.id]=new WeakRef(v),o.register(v,v.id,v),e.memory.geometries++),v}function u(g){let v=g.attributes;for(let _ in v)t.update(v[_],n.ARRAY_BUFFER)}function h(g){let v=g.index,_=g.attributes.position,m=0;if(_===void 0)return;let y=v!==null?v.array.length:_.array.length/3-1,M=_.count>=65535?Xo:Wo,b=new M(Math.ceil(y/3)*6,1),E=b.array;if(v!==null){let x=v.array;m=v.version;for(let T=0,D=0;T<y;T+=3){let R=x[T+0],P=x[T+1],F=x[T+2];E[D++]=R,E[D++]=P,E[D++]=P,E[D++]=F,E[D++]=F,E[D++]=R}}else{m=_.version;for(let x=0,T=0;x<y;x+=3){let D=x+0,R=x+1,P=x+2;E[T++]=D,E[T++]=R,E[T++]=R,E[T++]=P,E[T++]=P,E[T++]=D}}b.version=m;let A=r.get(g);A&&t.remove(A),r.set(g,b)}function d(g){let v=r.get(g);if(v){let _=g.index;_!==null&&v.version<_.version&&h(g)}else h(g);return r.get(g)}function f(){for(let g in s){let v=s[g].deref();v!==void 0&&l(v)}}return{get:c,update:u,getWireframeAttribute:d,dispose:f}}function IS(n,t,e){let i;function s(h){i=h}let r,o;function a(h){r=h.type,o=h.bytesPerElement}function l(h,d){n.drawElements(i,d,r,h*o),e.update(d,i,1)}function c(h,d,f){f!==0&&(n.drawElementsInstanced(i,d,r,h*o,f),e.update(d,i,f))}function u(h,d,f){if(f===0)return;t.get("WEBGL_multi_draw").multiDrawElementsWEBGL(i,d,0,r,h,0,f);let v=0;for(let _=0;_<f;_++)v+=d[_];e.update(v,i,1)}this.setMode=s,this.setIndex=a,this.render=l,this.renderInstances=c,this.renderMultiDraw=u}function DS(n){let t={geometries:0,textures:0},e={frame:0,calls:0,triangles:0,points:0,lines:0};function i(r,o,a){switch(e.calls++,o){case n.TRIANGLES:e.triangles+=a*(r/3);break;case n.LINES:e.lines+=a*(r/2);break;case n.LINE_STRIP:e.lines+=a*(r-1);break;case n.LINE_LOOP:e.lines+=a*r;break;case n.POINTS:e.points+=a*r;break;default:Ft("WebGLInfo: Unknown draw mode:",o);break}}function s(){e.calls=0,e.triangles=0,e.points=0,e.lines=0}return{memory:t,render:e,programs:null,autoReset:!0,reset:s,update:i}}function LS(n,t,e){let i=new WeakMap,s=new Te;function r(o,a,l){let c=o.morphTargetInfluences,u=a.morphAttributes.position||a.morphAttributes.normal||a.morphAttributes.color,h=u!==void 0?u.length:0,d=i.get(a);if(d===void 0||d.count!==h){let D=function(){x.dispose(),i.delete(a),a.removeEventListener("dispose",D)};d!==void 0&&d.texture.dispose();let f=a.morphAttributes.position!==void 0,g=a.morphAttributes.normal!==void 0,v=a.morphAttributes.color!==void 0,_=a.morphAttributes.position||[],m=a.morphAttributes.normal||[],y=a.morphAttributes.color||[],M=0;f===!0&&(M=1),g===!0&&(M=2),v===!0&&(M=3);let b=a.attributes.position.count*M,E=1;b>t.maxTextureSize&&(E=Math.ceil(b/t.maxTextureSize),b=t.maxTextureSize);let A=new Float32Array(b*E*4*h),x=new Vo(A,b,E,h);x.type=Xn,x.needsUpdate=!0;let T=M*4;for(let R=0;R<h;R++){let P=_[R],F=m[R],B=y[R],I=b*E*4*R;for(let W=0;W<P.count;W++){let X=W*T;f===!0&&(s.fromBufferAttribute(P,W),A[I+X+0]=s.x,A[I+X+1]=s.y,A[I+X+2]=s.z,A[I+X+3]=0),g===!0&&(s.fromBufferAttribute(F,W),A[I+X+4]=s.x,A[I+X+5]=s.y,A[I+X+6]=s.z,A[I+X+7]=0),v===!0&&(s.fromBufferAttribute(B,W),A[I+X+8]=s.x,A[I+X+9]=s.y,A[I+X+10]=s.z,A[I+X+11]=B.itemSize===4?s.w:1)}}d={count:h,texture:x,size:new rt(b,E)},i.set(a,d),a.addEventListener("dispose",D)}if(o.isInstancedMesh===!0&&o.morphTexture!==null)l.getUniforms().setValue(n,"morphTexture",o.morphTexture,e);else{let f=0;for(let v=0;v<c.length;v++)f+=c[v];let g=a.morphTargetsRelative?1:1-f;l.getUniforms().setValue(n,"morphTargetBaseInfluence",g),l.getUniforms().setValue(n,"morphTargetInfluences",c)}l.getUniforms().setValue(n,"morphTargetsTexture",d.texture,e),l.getUniforms().setValue(n,"morphTargetsTextureSize",d.size)}return{update:r}}function NS(n,t,e,i,s){let r=new WeakMap;function o(c){let u=s.render.frame,h=c.geometry,d=t.get(c,h);if(r.get(d)!==u&&(t.update(d),r.set(d,u)),c.isInstancedMesh&&(c.hasEventListener("dispose",l)===!1&&c.addEventListener("dispose",l),r.get(c)!==u&&(e.update(c.instanceMatrix,n.ARRAY_BUFFER),c.instanceColor!==null&&e.update(c.instanceColor,n.ARRAY_BUFFER),r.set(c,u))),c.isSkinnedMesh){let f=c.skeleton;r.get(f)!==u&&(f.update(),r.set(f,u))}return d}function a(){r=new WeakMap}function l(c){let u=c.target;u.removeEventListener("dispose",l),i.releaseStatesOfObject(u),e.remove(u.instanceMatrix),u.instanceColor!==null&&e.remove(u.instanceColor)}return{update:o,dispose:a}}var US={[wf]:"LINEAR_TONE_MAPPING",[Tf]:"REINHARD_TONE_MAPPING",[Af]:"CINEON_TONE_MAPPING",[Ef]:"ACES_FILMIC_TONE_MAPPING",[Rf]:"AGX_TONE_MAPPING",[Pf]:"NEUTRAL_TONE_MAPPING",[Cf]:"CUSTOM_TONE_MAPPING"};function FS(n,t,e,i,s,r){let o=new In(t,e,{type:n,depthBuffer:s,stencilBuffer:r,samples:i?4:0,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,resolveDepthBuffer:!1,resolveStencilBuffer:!1}),a=null,l=null,c=null,u=new he;u.setAttribute("position",new $t([-1,3,0,-1,-1,0,3,-1,0],3)),u.setAttribute("uv",new $t([0,2,0,0,2,0],2));let h=new vc({uniforms:{tDiffuse:{value:null}},vertexShader:`
			precision highp float;

			uniform mat4 modelViewMatrix;
			uniform mat4 projectionMatrix;

			attribute vec3 position;
			attribute vec2 uv;

			varying vec2 vUv;

			void main() {
				vUv = uv;
				gl_Position = projectionMatrix * modelViewMatrix * vec4( position, 1.0 );
			}`,fragmentShader:`
			precision highp float;

			uniform sampler2D tDiffuse;

			varying vec2 vUv;

			#include <tonemapping_pars_fragment>
			#include <colorspace_pars_fragment>

			void main() {
				gl_FragColor = texture2D( tDiffuse, vUv );

				#ifdef LINEAR_TONE_MAPPING
					gl_FragColor.rgb = LinearToneMapping( gl_FragColor.rgb );
				#elif defined( REINHARD_TONE_MAPPING )
					gl_FragColor.rgb = ReinhardToneMapping( gl_FragColor.rgb );
				#elif defined( CINEON_TONE_MAPPING )
					gl_FragColor.rgb = CineonToneMapping( gl_FragColor.rgb );
				#elif defined( ACES_FILMIC_TONE_MAPPING )
					gl_FragColor.rgb = ACESFilmicToneMapping( gl_FragColor.rgb );
				#elif defined( AGX_TONE_MAPPING )
					gl_FragColor.rgb = AgXToneMapping( gl_FragColor.rgb );
				#elif defined( NEUTRAL_TONE_MAPPING )
					gl_FragColor.rgb = NeutralToneMapping( gl_FragColor.rgb );
				#elif defined( CUSTOM_TONE_MAPPING )
					gl_FragColor.rgb = CustomToneMapping( gl_FragColor.rgb );
				#endif

				#ifdef SRGB_TRANSFER
					gl_FragColor = sRGBTransferOETF( gl_FragColor );
				#endif
			}`,depthTest:!1,depthWrite:!1}),d=new Le(u,h),f=new da(-1,1,1,-1,0,1),g=null,v=null,_=!1,m,y=null,M=[],b=!1;this.setSize=function(E,A){o.setSize(E,A),a!==null&&a.setSize(E,A),l!==null&&l.setSize(E,A);for(let x=0;x<M.length;x++){let T=M[x];T.setSize&&T.setSize(E,A)}},this.setEffects=function(E){M=E,b=M.length>0&&M[0].isRenderPass===!0;let A=o.width,x=o.height;M.length>0&&a===null&&(a=new In(A,x,{type:ii,depthBuffer:!1,stencilBuffer:!1}),l=new In(A,x,{type:ii,depthBuffer:!1,stencilBuffer:!1}));let T=s===!0&&M.some(D=>D.needsDepthTexture===!0);T!==(o.depthTexture!==null)&&(T===!0&&c===null&&(c=new Ui(A,x),r===!0&&(c.format=ki,c.type=Bs)),o.dispose(),o.depthTexture=T?c:null,o.resolveDepthBuffer=T,o.storeMultisampledDepthBuffer=T);for(let D=0;D<M.length;D++){let R=M[D];R.setSize&&R.setSize(A,x),T&&R.needsDepthTexture===!0&&R.setDepthTexture&&R.setDepthTexture(c)}},this.begin=function(E,A){if(_||E.toneMapping===pi&&M.length===0)return!1;if(y=A,A!==null){let x=A.width,T=A.height;(o.width!==x||o.height!==T)&&this.setSize(x,T)}return b===!1&&E.setRenderTarget(o),m=E.toneMapping,E.toneMapping=pi,!0},this.hasRenderPass=function(){return b},this.end=function(E,A){E.toneMapping=m,_=!0;let x=o,T=a;for(let D=0;D<M.length;D++){let R=M[D];R.enabled!==!1&&(R.render(E,T,x,A),R.needsSwap!==!1&&(x=T,T=T===a?l:a))}if(g!==E.outputColorSpace||v!==E.toneMapping){g=E.outputColorSpace,v=E.toneMapping,h.defines={},Kt.getTransfer(g)===ce&&(h.defines.SRGB_TRANSFER="");let D=US[v];D&&(h.defines[D]=""),h.needsUpdate=!0}h.uniforms.tDiffuse.value=x.texture,E.setRenderTarget(y),E.render(d,f),y=null,_=!1},this.isCompositing=function(){return _},this.dispose=function(){o.dispose(),a!==null&&a.dispose(),l!==null&&l.dispose(),u.dispose(),h.dispose()}}var y0=new bn,x0=new Ui(1,1),b0=new Jo(1),M0=new Vo,S0=new ac,w0=new Zo,jg=[],Qg=[],t0=new Float32Array(16),e0=new Float32Array(9),n0=new Float32Array(4);function qr(n,t,e){let i=n[0];if(i<=0||i>0)return n;let s=t*e,r=jg[s];if(r===void 0&&(r=new Float32Array(s),jg[s]=r),t!==0){i.toArray(r,0);for(let o=1,a=0;o!==t;++o)a+=e,n[o].toArray(r,a)}return r}function Xe(n,t){if(n.length!==t.length)return!1;for(let e=0,i=n.length;e<i;e++)if(n[e]!==t[e])return!1;return!0}function qe(n,t){for(let e=0,i=t.length;e<i;e++)n[e]=t[e]}function Au(n,t){let e=Qg[t];e===void 0&&(e=new Int32Array(t),Qg[t]=e);for(let i=0;i!==t;++i)e[i]=n.allocateTextureUnit();return e}function OS(n,t){let e=this.cache;e[0]!==t&&(n.uniform1f(this.addr,t),e[0]=t)}function kS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2f(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Xe(e,t))return;n.uniform2fv(this.addr,t),qe(e,t)}}function BS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3f(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else if(t.r!==void 0)(e[0]!==t.r||e[1]!==t.g||e[2]!==t.b)&&(n.uniform3f(this.addr,t.r,t.g,t.b),e[0]=t.r,e[1]=t.g,e[2]=t.b);else{if(Xe(e,t))return;n.uniform3fv(this.addr,t),qe(e,t)}}function zS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4f(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Xe(e,t))return;n.uniform4fv(this.addr,t),qe(e,t)}}function VS(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(Xe(e,t))return;n.uniformMatrix2fv(this.addr,!1,t),qe(e,t)}else{if(Xe(e,i))return;n0.set(i),n.uniformMatrix2fv(this.addr,!1,n0),qe(e,i)}}function GS(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(Xe(e,t))return;n.uniformMatrix3fv(this.addr,!1,t),qe(e,t)}else{if(Xe(e,i))return;e0.set(i),n.uniformMatrix3fv(this.addr,!1,e0),qe(e,i)}}function HS(n,t){let e=this.cache,i=t.elements;if(i===void 0){if(Xe(e,t))return;n.uniformMatrix4fv(this.addr,!1,t),qe(e,t)}else{if(Xe(e,i))return;t0.set(i),n.uniformMatrix4fv(this.addr,!1,t0),qe(e,i)}}function WS(n,t){let e=this.cache;e[0]!==t&&(n.uniform1i(this.addr,t),e[0]=t)}function XS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2i(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Xe(e,t))return;n.uniform2iv(this.addr,t),qe(e,t)}}function qS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3i(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(Xe(e,t))return;n.uniform3iv(this.addr,t),qe(e,t)}}function $S(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4i(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Xe(e,t))return;n.uniform4iv(this.addr,t),qe(e,t)}}function YS(n,t){let e=this.cache;e[0]!==t&&(n.uniform1ui(this.addr,t),e[0]=t)}function ZS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y)&&(n.uniform2ui(this.addr,t.x,t.y),e[0]=t.x,e[1]=t.y);else{if(Xe(e,t))return;n.uniform2uiv(this.addr,t),qe(e,t)}}function JS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z)&&(n.uniform3ui(this.addr,t.x,t.y,t.z),e[0]=t.x,e[1]=t.y,e[2]=t.z);else{if(Xe(e,t))return;n.uniform3uiv(this.addr,t),qe(e,t)}}function KS(n,t){let e=this.cache;if(t.x!==void 0)(e[0]!==t.x||e[1]!==t.y||e[2]!==t.z||e[3]!==t.w)&&(n.uniform4ui(this.addr,t.x,t.y,t.z,t.w),e[0]=t.x,e[1]=t.y,e[2]=t.z,e[3]=t.w);else{if(Xe(e,t))return;n.uniform4uiv(this.addr,t),qe(e,t)}}function Eu(n){return n.version===0&&(n.compareFunction=zf,n.needsUpdate=!0),n}function jS(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_2D_SHADOW?r=Eu(x0):r=y0,e.setTexture2D(t||r,s)}function QS(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture3D(t||S0,s)}function tw(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s);let r;this.type===n.SAMPLER_CUBE_SHADOW?r=Eu(b0):r=w0,e.setTextureCube(t||r,s)}function ew(n,t,e){let i=this.cache,s=e.allocateTextureUnit();i[0]!==s&&(n.uniform1i(this.addr,s),i[0]=s),e.setTexture2DArray(t||M0,s)}function nw(n){switch(n){case 5126:return OS;case 35664:return kS;case 35665:return BS;case 35666:return zS;case 35674:return VS;case 35675:return GS;case 35676:return HS;case 5124:case 35670:return WS;case 35667:case 35671:return XS;case 35668:case 35672:return qS;case 35669:case 35673:return $S;case 5125:return YS;case 36294:return ZS;case 36295:return JS;case 36296:return KS;case 35678:case 36198:case 36298:case 36306:case 35682:return jS;case 35679:case 36299:case 36307:return QS;case 35680:case 36300:case 36308:case 36293:return tw;case 36289:case 36303:case 36311:case 36292:return ew}}function iw(n,t){n.uniform1fv(this.addr,t)}function sw(n,t){let e=qr(t,this.size,2);n.uniform2fv(this.addr,e)}function rw(n,t){let e=qr(t,this.size,3);n.uniform3fv(this.addr,e)}function ow(n,t){let e=qr(t,this.size,4);n.uniform4fv(this.addr,e)}function aw(n,t){let e=qr(t,this.size,4);n.uniformMatrix2fv(this.addr,!1,e)}function lw(n,t){let e=qr(t,this.size,9);n.uniformMatrix3fv(this.addr,!1,e)}function cw(n,t){let e=qr(t,this.size,16);n.uniformMatrix4fv(this.addr,!1,e)}function uw(n,t){n.uniform1iv(this.addr,t)}function hw(n,t){n.uniform2iv(this.addr,t)}function fw(n,t){n.uniform3iv(this.addr,t)}function dw(n,t){n.uniform4iv(this.addr,t)}function pw(n,t){n.uniform1uiv(this.addr,t)}function mw(n,t){n.uniform2uiv(this.addr,t)}function gw(n,t){n.uniform3uiv(this.addr,t)}function _w(n,t){n.uniform4uiv(this.addr,t)}function vw(n,t,e){let i=this.cache,s=t.length,r=Au(e,s);Xe(i,r)||(n.uniform1iv(this.addr,r),qe(i,r));let o;this.type===n.SAMPLER_2D_SHADOW?o=Eu(x0):o=y0;for(let a=0;a!==s;++a)e.setTexture2D(t[a]||o,r[a])}function yw(n,t,e){let i=this.cache,s=t.length,r=Au(e,s);Xe(i,r)||(n.uniform1iv(this.addr,r),qe(i,r));for(let o=0;o!==s;++o)e.setTexture3D(t[o]||S0,r[o])}function xw(n,t,e){let i=this.cache,s=t.length,r=Au(e,s);Xe(i,r)||(n.uniform1iv(this.addr,r),qe(i,r));let o;this.type===n.SAMPLER_CUBE_SHADOW?o=Eu(b0):o=w0;for(let a=0;a!==s;++a)e.setTextureCube(t[a]||o,r[a])}function bw(n,t,e){let i=this.cache,s=t.length,r=Au(e,s);Xe(i,r)||(n.uniform1iv(this.addr,r),qe(i,r));for(let o=0;o!==s;++o)e.setTexture2DArray(t[o]||M0,r[o])}function Mw(n){switch(n){case 5126:return iw;case 35664:return sw;case 35665:return rw;case 35666:return ow;case 35674:return aw;case 35675:return lw;case 35676:return cw;case 5124:case 35670:return uw;case 35667:case 35671:return hw;case 35668:case 35672:return fw;case 35669:case 35673:return dw;case 5125:return pw;case 36294:return mw;case 36295:return gw;case 36296:return _w;case 35678:case 36198:case 36298:case 36306:case 35682:return vw;case 35679:case 36299:case 36307:return yw;case 35680:case 36300:case 36308:case 36293:return xw;case 36289:case 36303:case 36311:case 36292:return bw}}var Qf=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.setValue=nw(e.type)}},td=class{constructor(t,e,i){this.id=t,this.addr=i,this.cache=[],this.type=e.type,this.size=e.size,this.setValue=Mw(e.type)}},ed=class{constructor(t){this.id=t,this.seq=[],this.map={}}setValue(t,e,i){let s=this.seq;for(let r=0,o=s.length;r!==o;++r){let a=s[r];a.setValue(t,e[a.id],i)}}},Kf=/(\w+)(\])?(\[|\.)?/g;function i0(n,t){n.seq.push(t),n.map[t.id]=t}function Sw(n,t,e){let i=n.name,s=i.length;for(Kf.lastIndex=0;;){let r=Kf.exec(i),o=Kf.lastIndex,a=r[1],l=r[2]==="]",c=r[3];if(l&&(a=a|0),c===void 0||c==="["&&o+2===s){i0(e,c===void 0?new Qf(a,n,t):new td(a,n,t));break}else{let h=e.map[a];h===void 0&&(h=new ed(a),i0(e,h)),e=h}}}var Xr=class{constructor(t,e){this.seq=[],this.map={};let i=t.getProgramParameter(e,t.ACTIVE_UNIFORMS);for(let o=0;o<i;++o){let a=t.getActiveUniform(e,o),l=t.getUniformLocation(e,a.name);Sw(a,l,this)}let s=[],r=[];for(let o of this.seq)o.type===t.SAMPLER_2D_SHADOW||o.type===t.SAMPLER_CUBE_SHADOW||o.type===t.SAMPLER_2D_ARRAY_SHADOW?s.push(o):r.push(o);s.length>0&&(this.seq=s.concat(r))}setValue(t,e,i,s){let r=this.map[e];r!==void 0&&r.setValue(t,i,s)}setOptional(t,e,i){let s=e[i];s!==void 0&&this.setValue(t,i,s)}static upload(t,e,i,s){for(let r=0,o=e.length;r!==o;++r){let a=e[r],l=i[a.id];l.needsUpdate!==!1&&a.setValue(t,l.value,s)}}static seqWithValue(t,e){let i=[];for(let s=0,r=t.length;s!==r;++s){let o=t[s];o.id in e&&i.push(o)}return i}};function s0(n,t,e){let i=n.createShader(t);return n.shaderSource(i,e),n.compileShader(i),i}var ww=37297,Tw=0;function Aw(n,t){let e=n.split(`
`),i=[],s=Math.max(t-6,0),r=Math.min(t+6,e.length);for(let o=s;o<r;o++){let a=o+1;i.push(`${a===t?">":" "} ${a}: ${e[o]}`)}return i.join(`
`)}var r0=new kt;function Ew(n){Kt._getMatrix(r0,Kt.workingColorSpace,n);let t=`mat3( ${r0.elements.map(e=>e.toFixed(4))} )`;switch(Kt.getTransfer(n)){case Bo:return[t,"LinearTransferOETF"];case ce:return[t,"sRGBTransferOETF"];default:return It("WebGLProgram: Unsupported color space: ",n),[t,"LinearTransferOETF"]}}function o0(n,t,e){let i=n.getShaderParameter(t,n.COMPILE_STATUS),r=(n.getShaderInfoLog(t)||"").trim();if(i&&r==="")return"";let o=/ERROR: 0:(\d+)/.exec(r);if(o){let a=parseInt(o[1]);return e.toUpperCase()+`

`+r+`

`+Aw(n.getShaderSource(t),a)}else return r}function Cw(n,t){let e=Ew(t);return[`vec4 ${n}( vec4 value ) {`,`	return ${e[1]}( vec4( ${e[0]} * value.rgb, value.a ) );`,"}"].join(`
`)}var Rw={[wf]:"Linear",[Tf]:"Reinhard",[Af]:"Cineon",[Ef]:"ACESFilmic",[Rf]:"AgX",[Pf]:"Neutral",[Cf]:"Custom"};function Pw(n,t){let e=Rw[t];return e===void 0?(It("WebGLProgram: Unsupported toneMapping:",t),"vec3 "+n+"( vec3 color ) { return LinearToneMapping( color ); }"):"vec3 "+n+"( vec3 color ) { return "+e+"ToneMapping( color ); }"}var Su=new N;function Iw(){Kt.getLuminanceCoefficients(Su);let n=Su.x.toFixed(4),t=Su.y.toFixed(4),e=Su.z.toFixed(4);return["float luminance( const in vec3 rgb ) {",`	const vec3 weights = vec3( ${n}, ${t}, ${e} );`,"	return dot( weights, rgb );","}"].join(`
`)}function Dw(n){return[n.extensionClipCullDistance?"#extension GL_ANGLE_clip_cull_distance : require":"",n.extensionMultiDraw?"#extension GL_ANGLE_multi_draw : require":""].filter(Ta).join(`
`)}function Lw(n){let t=[];for(let e in n){let i=n[e];i!==!1&&t.push("#define "+e+" "+i)}return t.join(`
`)}function Nw(n,t){let e={},i=n.getProgramParameter(t,n.ACTIVE_ATTRIBUTES);for(let s=0;s<i;s++){let r=n.getActiveAttrib(t,s),o=r.name,a=1;r.type===n.FLOAT_MAT2&&(a=2),r.type===n.FLOAT_MAT3&&(a=3),r.type===n.FLOAT_MAT4&&(a=4),e[o]={type:r.type,location:n.getAttribLocation(t,o),locationSize:a}}return e}function Ta(n){return n!==""}function a0(n,t){let e=t.numSpotLightShadows+t.numSpotLightMaps-t.numSpotLightShadowsWithMaps;return n.replace(/NUM_SUN_LIGHTS/g,t.numSunLights).replace(/NUM_DIR_LIGHTS/g,t.numDirLights).replace(/NUM_SPOT_LIGHTS/g,t.numSpotLights).replace(/NUM_SPOT_LIGHT_MAPS/g,t.numSpotLightMaps).replace(/NUM_SPOT_LIGHT_COORDS/g,e).replace(/NUM_RECT_AREA_LIGHTS/g,t.numRectAreaLights).replace(/NUM_POINT_LIGHTS/g,t.numPointLights).replace(/NUM_HEMI_LIGHTS/g,t.numHemiLights).replace(/NUM_SUN_LIGHT_SHADOWS/g,t.numSunLightShadows).replace(/NUM_DIR_LIGHT_SHADOWS/g,t.numDirLightShadows).replace(/NUM_SPOT_LIGHT_SHADOWS_WITH_MAPS/g,t.numSpotLightShadowsWithMaps).replace(/NUM_SPOT_LIGHT_SHADOWS/g,t.numSpotLightShadows).replace(/NUM_POINT_LIGHT_SHADOWS/g,t.numPointLightShadows).replace(/NUM_LIGHT_PROBE_GRIDS/g,t.numLightProbeGrids)}function l0(n,t){return n.replace(/NUM_CLIPPING_PLANES/g,t.numClippingPlanes).replace(/UNION_CLIPPING_PLANES/g,t.numClippingPlanes-t.numClipIntersection)}var Uw=/^[ \t]*#include +<([\w\d./]+)>/gm;function nd(n){return n.replace(Uw,Fw)}function Fw(n,t){let e=Xt[t];if(e===void 0)throw new Error("THREE.WebGLProgram: Can not resolve #include <"+t+">");return nd(e)}var Ow=/#pragma unroll_loop_start\s+for\s*\(\s*int\s+i\s*=\s*(\d+)\s*;\s*i\s*<\s*(\d+)\s*;\s*i\s*\+\+\s*\)\s*{([\s\S]+?)}\s+#pragma unroll_loop_end/g;function c0(n){return n.replace(Ow,kw)}function kw(n,t,e,i){let s="";for(let r=parseInt(t);r<parseInt(e);r++)s+=i.replace(/\[\s*i\s*\]/g,"[ "+r+" ]").replace(/UNROLLED_LOOP_INDEX/g,r);return s}function u0(n){let t=`precision ${n.precision} float;
	precision ${n.precision} int;
	precision ${n.precision} sampler2D;
	precision ${n.precision} samplerCube;
	precision ${n.precision} sampler3D;
	precision ${n.precision} sampler2DArray;
	precision ${n.precision} sampler2DShadow;
	precision ${n.precision} samplerCubeShadow;
	precision ${n.precision} sampler2DArrayShadow;
	precision ${n.precision} isampler2D;
	precision ${n.precision} isampler3D;
	precision ${n.precision} isamplerCube;
	precision ${n.precision} isampler2DArray;
	precision ${n.precision} usampler2D;
	precision ${n.precision} usampler3D;
	precision ${n.precision} usamplerCube;
	precision ${n.precision} usampler2DArray;
	`;return n.precision==="highp"?t+=`
#define HIGH_PRECISION`:n.precision==="mediump"?t+=`
#define MEDIUM_PRECISION`:n.precision==="lowp"&&(t+=`
#define LOW_PRECISION`),t}var Bw={[ga]:"SHADOWMAP_TYPE_PCF",[Vr]:"SHADOWMAP_TYPE_VSM"};function zw(n){return Bw[n.shadowMapType]||"SHADOWMAP_TYPE_BASIC"}var Vw={[Hr]:"ENVMAP_MODE_REFRACTION"};function Gw(n){return n.envMap===!1?"ENVMAP_MODE_REFLECTION":Vw[n.envMapMode]||"ENVMAP_MODE_REFLECTION"}var Hw={[Lc]:"ENVMAP_BLENDING_MULTIPLY",[Mg]:"ENVMAP_BLENDING_MIX",[Sg]:"ENVMAP_BLENDING_ADD"};function Ww(n){return n.envMap===!1?"ENVMAP_BLENDING_NONE":Hw[n.combine]||"ENVMAP_BLENDING_NONE"}function Xw(n,t,e,i){let s=n.getContext(),r=e.defines,o=e.vertexShader,a=e.fragmentShader,l=zw(e),c=e.envMapPMREM===!0?"ENVMAP_TYPE_PMREM":"ENVMAP_TYPE_CUBE",u=Gw(e),h=Ww(e),d=Dw(e),f=Lw(r),g=s.createProgram(),v,_,m=e.glslVersion?"#version "+e.glslVersion+`
`:"";e.isRawShaderMaterial?(v=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ta).join(`
`),v.length>0&&(v+=`
`),_=["#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f].filter(Ta).join(`
`),_.length>0&&(_+=`
`)):(v=[u0(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.extensionClipCullDistance?"#define USE_CLIP_DISTANCE":"",e.batching?"#define USE_BATCHING":"",e.batchingColor?"#define USE_BATCHING_COLOR":"",e.instancing?"#define USE_INSTANCING":"",e.instancingColor?"#define USE_INSTANCING_COLOR":"",e.instancingMorph?"#define USE_INSTANCING_MORPH":"",e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.map?"#define USE_MAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+u:"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.displacementMap?"#define USE_DISPLACEMENTMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.mapUv?"#define MAP_UV "+e.mapUv:"",e.alphaMapUv?"#define ALPHAMAP_UV "+e.alphaMapUv:"",e.lightMapUv?"#define LIGHTMAP_UV "+e.lightMapUv:"",e.aoMapUv?"#define AOMAP_UV "+e.aoMapUv:"",e.emissiveMapUv?"#define EMISSIVEMAP_UV "+e.emissiveMapUv:"",e.bumpMapUv?"#define BUMPMAP_UV "+e.bumpMapUv:"",e.normalMapUv?"#define NORMALMAP_UV "+e.normalMapUv:"",e.displacementMapUv?"#define DISPLACEMENTMAP_UV "+e.displacementMapUv:"",e.metalnessMapUv?"#define METALNESSMAP_UV "+e.metalnessMapUv:"",e.roughnessMapUv?"#define ROUGHNESSMAP_UV "+e.roughnessMapUv:"",e.anisotropyMapUv?"#define ANISOTROPYMAP_UV "+e.anisotropyMapUv:"",e.clearcoatMapUv?"#define CLEARCOATMAP_UV "+e.clearcoatMapUv:"",e.clearcoatNormalMapUv?"#define CLEARCOAT_NORMALMAP_UV "+e.clearcoatNormalMapUv:"",e.clearcoatRoughnessMapUv?"#define CLEARCOAT_ROUGHNESSMAP_UV "+e.clearcoatRoughnessMapUv:"",e.diffuseRoughnessMapUv?"#define DIFFUSE_ROUGHNESSMAP_UV "+e.diffuseRoughnessMapUv:"",e.iridescenceMapUv?"#define IRIDESCENCEMAP_UV "+e.iridescenceMapUv:"",e.iridescenceThicknessMapUv?"#define IRIDESCENCE_THICKNESSMAP_UV "+e.iridescenceThicknessMapUv:"",e.sheenColorMapUv?"#define SHEEN_COLORMAP_UV "+e.sheenColorMapUv:"",e.sheenRoughnessMapUv?"#define SHEEN_ROUGHNESSMAP_UV "+e.sheenRoughnessMapUv:"",e.specularMapUv?"#define SPECULARMAP_UV "+e.specularMapUv:"",e.specularColorMapUv?"#define SPECULAR_COLORMAP_UV "+e.specularColorMapUv:"",e.specularIntensityMapUv?"#define SPECULAR_INTENSITYMAP_UV "+e.specularIntensityMapUv:"",e.transmissionMapUv?"#define TRANSMISSIONMAP_UV "+e.transmissionMapUv:"",e.thicknessMapUv?"#define THICKNESSMAP_UV "+e.thicknessMapUv:"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexNormals?"#define HAS_NORMAL":"",e.vertexColors?"#define USE_COLOR":"",e.vertexAlphas?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.flatShading?"#define FLAT_SHADED":"",e.skinning?"#define USE_SKINNING":"",e.morphTargets?"#define USE_MORPHTARGETS":"",e.morphNormals&&e.flatShading===!1?"#define USE_MORPHNORMALS":"",e.morphColors?"#define USE_MORPHCOLORS":"",e.morphTargetsCount>0?"#define MORPHTARGETS_TEXTURE_STRIDE "+e.morphTextureStride:"",e.morphTargetsCount>0?"#define MORPHTARGETS_COUNT "+e.morphTargetsCount:"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.sizeAttenuation?"#define USE_SIZEATTENUATION":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 modelMatrix;","uniform mat4 modelViewMatrix;","uniform mat4 projectionMatrix;","uniform mat4 viewMatrix;","uniform mat3 normalMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;","#ifdef USE_INSTANCING","	attribute mat4 instanceMatrix;","#endif","#ifdef USE_INSTANCING_COLOR","	attribute vec3 instanceColor;","#endif","#ifdef USE_INSTANCING_MORPH","	uniform sampler2D morphTexture;","#endif","attribute vec3 position;","attribute vec3 normal;","attribute vec2 uv;","#ifdef USE_UV1","	attribute vec2 uv1;","#endif","#ifdef USE_UV2","	attribute vec2 uv2;","#endif","#ifdef USE_UV3","	attribute vec2 uv3;","#endif","#ifdef USE_TANGENT","	attribute vec4 tangent;","#endif","#if defined( USE_COLOR_ALPHA )","	attribute vec4 color;","#elif defined( USE_COLOR )","	attribute vec3 color;","#endif","#ifdef USE_SKINNING","	attribute vec4 skinIndex;","	attribute vec4 skinWeight;","#endif",`
`].filter(Ta).join(`
`),_=[u0(e),"#define SHADER_TYPE "+e.shaderType,"#define SHADER_NAME "+e.shaderName,f,e.useFog&&e.fog?"#define USE_FOG":"",e.useFog&&e.fogExp2?"#define FOG_EXP2":"",e.alphaToCoverage?"#define ALPHA_TO_COVERAGE":"",e.map?"#define USE_MAP":"",e.matcap?"#define USE_MATCAP":"",e.envMap?"#define USE_ENVMAP":"",e.envMap?"#define "+c:"",e.envMap?"#define "+u:"",e.envMap?"#define "+h:"",e.envMapPMREM?"#define ENVMAP_MAX_LOD "+e.envMapMaxLod+".0":"",e.envMapPMREM?"#define ENVMAP_SIZE "+e.envMapSize+".0":"",e.lightMap?"#define USE_LIGHTMAP":"",e.aoMap?"#define USE_AOMAP":"",e.bumpMap?"#define USE_BUMPMAP":"",e.normalMap?"#define USE_NORMALMAP":"",e.normalMapObjectSpace?"#define USE_NORMALMAP_OBJECTSPACE":"",e.normalMapTangentSpace?"#define USE_NORMALMAP_TANGENTSPACE":"",e.packedNormalMap?"#define USE_PACKED_NORMALMAP":"",e.emissiveMap?"#define USE_EMISSIVEMAP":"",e.anisotropy?"#define USE_ANISOTROPY":"",e.anisotropyMap?"#define USE_ANISOTROPYMAP":"",e.clearcoat?"#define USE_CLEARCOAT":"",e.clearcoatMap?"#define USE_CLEARCOATMAP":"",e.clearcoatRoughnessMap?"#define USE_CLEARCOAT_ROUGHNESSMAP":"",e.clearcoatNormalMap?"#define USE_CLEARCOAT_NORMALMAP":"",e.diffuseRoughness?"#define USE_DIFFUSE_ROUGHNESS":"",e.diffuseRoughnessMap?"#define USE_DIFFUSE_ROUGHNESSMAP":"",e.dispersion?"#define USE_DISPERSION":"",e.retroreflection?"#define USE_RETROREFLECTION":"",e.iridescence?"#define USE_IRIDESCENCE":"",e.iridescenceMap?"#define USE_IRIDESCENCEMAP":"",e.iridescenceThicknessMap?"#define USE_IRIDESCENCE_THICKNESSMAP":"",e.specularMap?"#define USE_SPECULARMAP":"",e.specularColorMap?"#define USE_SPECULAR_COLORMAP":"",e.specularIntensityMap?"#define USE_SPECULAR_INTENSITYMAP":"",e.roughnessMap?"#define USE_ROUGHNESSMAP":"",e.metalnessMap?"#define USE_METALNESSMAP":"",e.alphaMap?"#define USE_ALPHAMAP":"",e.alphaTest?"#define USE_ALPHATEST":"",e.alphaHash?"#define USE_ALPHAHASH":"",e.sheen?"#define USE_SHEEN":"",e.sheenColorMap?"#define USE_SHEEN_COLORMAP":"",e.sheenRoughnessMap?"#define USE_SHEEN_ROUGHNESSMAP":"",e.transmission?"#define USE_TRANSMISSION":"",e.transmissionMap?"#define USE_TRANSMISSIONMAP":"",e.thicknessMap?"#define USE_THICKNESSMAP":"",e.vertexTangents&&e.flatShading===!1?"#define USE_TANGENT":"",e.vertexColors||e.instancingColor?"#define USE_COLOR":"",e.vertexAlphas||e.batchingColor?"#define USE_COLOR_ALPHA":"",e.vertexUv1s?"#define USE_UV1":"",e.vertexUv2s?"#define USE_UV2":"",e.vertexUv3s?"#define USE_UV3":"",e.pointsUvs?"#define USE_POINTS_UV":"",e.gradientMap?"#define USE_GRADIENTMAP":"",e.flatShading?"#define FLAT_SHADED":"",e.doubleSided?"#define DOUBLE_SIDED":"",e.flipSided?"#define FLIP_SIDED":"",e.shadowMapEnabled?"#define USE_SHADOWMAP":"",e.shadowMapEnabled?"#define "+l:"",e.premultipliedAlpha?"#define PREMULTIPLIED_ALPHA":"",e.numLightProbes>0?"#define USE_LIGHT_PROBES":"",e.decodeVideoTexture?"#define DECODE_VIDEO_TEXTURE":"",e.decodeVideoTextureEmissive?"#define DECODE_VIDEO_TEXTURE_EMISSIVE":"",e.logarithmicDepthBuffer?"#define USE_LOGARITHMIC_DEPTH_BUFFER":"",e.reversedDepthBuffer?"#define USE_REVERSED_DEPTH_BUFFER":"","uniform mat4 viewMatrix;","uniform vec3 cameraPosition;","uniform bool isOrthographic;",e.toneMapping!==pi?"#define TONE_MAPPING":"",e.toneMapping!==pi?Xt.tonemapping_pars_fragment:"",e.toneMapping!==pi?Pw("toneMapping",e.toneMapping):"",e.dithering?"#define DITHERING":"",e.opaque?"#define OPAQUE":"",Xt.colorspace_pars_fragment,Cw("linearToOutputTexel",e.outputColorSpace),Iw(),e.useDepthPacking?"#define DEPTH_PACKING "+e.depthPacking:"",`
`].filter(Ta).join(`
`)),o=nd(o),o=a0(o,e),o=l0(o,e),a=nd(a),a=a0(a,e),a=l0(a,e),o=c0(o),a=c0(a),e.isRawShaderMaterial!==!0&&(m=`#version 300 es
`,v=[d,"#define attribute in","#define varying out","#define texture2D texture"].join(`
`)+`
`+v,_=["#define varying in",e.glslVersion===Vf?"":"layout(location = 0) out highp vec4 pc_fragColor;",e.glslVersion===Vf?"":"#define gl_FragColor pc_fragColor","#define gl_FragDepthEXT gl_FragDepth","#define texture2D texture","#define textureCube texture","#define texture2DProj textureProj","#define texture2DLodEXT textureLod","#define texture2DProjLodEXT textureProjLod","#define textureCubeLodEXT textureLod","#define texture2DGradEXT textureGrad","#define texture2DProjGradEXT textureProjGrad","#define textureCubeGradEXT textureGrad"].join(`
`)+`
`+_);let y=m+v+o,M=m+_+a,b=s0(s,s.VERTEX_SHADER,y),E=s0(s,s.FRAGMENT_SHADER,M);s.attachShader(g,b),s.attachShader(g,E),e.index0AttributeName!==void 0?s.bindAttribLocation(g,0,e.index0AttributeName):e.hasPositionAttribute===!0&&s.bindAttribLocation(g,0,"position"),s.linkProgram(g);function A(R){if(n.debug.checkShaderErrors){let P=s.getProgramInfoLog(g)||"",F=s.getShaderInfoLog(b)||"",B=s.getShaderInfoLog(E)||"",I=P.trim(),W=F.trim(),X=B.trim(),k=!0,Q=!0;if(s.getProgramParameter(g,s.LINK_STATUS)===!1)if(k=!1,typeof n.debug.onShaderError=="function")n.debug.onShaderError(s,g,b,E);else{let G=o0(s,b,"vertex"),tt=o0(s,E,"fragment");Ft("WebGLProgram: Shader Error "+s.getError()+" - VALIDATE_STATUS "+s.getProgramParameter(g,s.VALIDATE_STATUS)+`

Material Name: `+R.name+`
Material Type: `+R.type+`

Program Info Log: `+I+`
`+G+`
`+tt)}else I!==""?It("WebGLProgram: Program Info Log:",I):(W===""||X==="")&&(Q=!1);Q&&(R.diagnostics={runnable:k,programLog:I,vertexShader:{log:W,prefix:v},fragmentShader:{log:X,prefix:_}})}s.deleteShader(b),s.deleteShader(E),x=new Xr(s,g),T=Nw(s,g)}let x;this.getUniforms=function(){return x===void 0&&A(this),x};let T;this.getAttributes=function(){return T===void 0&&A(this),T};let D=e.rendererExtensionParallelShaderCompile===!1;return this.isReady=function(){return D===!1&&(D=s.getProgramParameter(g,ww)),D},this.destroy=function(){i.releaseStatesOfProgram(this),s.deleteProgram(g),this.program=void 0},this.type=e.shaderType,this.name=e.shaderName,this.id=Tw++,this.cacheKey=t,this.usedTimes=1,this.program=g,this.vertexShader=b,this.fragmentShader=E,this}var qw=0,id=class{constructor(){this.shaderCache=new Map,this.materialCache=new Map}update(t,e,i){let s=this._getShaderCacheForMaterial(t);return s.has(e)===!1&&(s.add(e),e.usedTimes++),s.has(i)===!1&&(s.add(i),i.usedTimes++),this}remove(t){let e=this.materialCache.get(t);for(let i of e)i.usedTimes--,i.usedTimes===0&&this.shaderCache.delete(i.code);return this.materialCache.delete(t),this}getVertexShaderStage(t){return this._getShaderStage(t.vertexShader)}getFragmentShaderStage(t){return this._getShaderStage(t.fragmentShader)}dispose(){this.shaderCache.clear(),this.materialCache.clear()}_getShaderCacheForMaterial(t){let e=this.materialCache,i=e.get(t);return i===void 0&&(i=new Set,e.set(t,i)),i}_getShaderStage(t){let e=this.shaderCache,i=e.get(t);return i===void 0&&(i=new sd(t),e.set(t,i)),i}},sd=class{constructor(t){this.id=qw++,this.code=t,this.usedTimes=0}};function $w(n){return n===fs||n===Ma||n===Sa}function Yw(n,t,e,i,s,r){let o=new Go,a=new id,l=new Set,c=[],u=new Map,h=i.logarithmicDepthBuffer,d={MeshDepthMaterial:"depth",MeshDistanceMaterial:"distance",MeshNormalMaterial:"normal",MeshBasicMaterial:"basic",MeshLambertMaterial:"lambert",MeshPhongMaterial:"phong",MeshToonMaterial:"toon",MeshStandardMaterial:"physical",MeshPhysicalMaterial:"physical",MeshMatcapMaterial:"matcap",LineBasicMaterial:"basic",LineDashedMaterial:"dashed",PointsMaterial:"points",ShadowMaterial:"shadow",SpriteMaterial:"sprite"};function f(x){return l.add(x),x===0?"uv":`uv${x}`}function g(x,T,D,R,P,F){let B=R.fog,I=P.geometry,W=x.isMeshStandardMaterial||x.isMeshLambertMaterial||x.isMeshPhongMaterial?R.environment:null,X=x.isMeshStandardMaterial||x.isMeshLambertMaterial&&!x.envMap||x.isMeshPhongMaterial&&!x.envMap,k=t.get(x.envMap||W,X),Q=d[x.type],G=i.precision;x.precision!==null&&(G=i.getMaxPrecision(x.precision),G!==x.precision&&It("WebGLProgram.getParameters:",x.precision,"not supported, using",G,"instead."));let tt=I.morphAttributes.position||I.morphAttributes.normal||I.morphAttributes.color,et=tt!==void 0?tt.length:0,bt=0;I.morphAttributes.position!==void 0&&(bt=1),I.morphAttributes.normal!==void 0&&(bt=2),I.morphAttributes.color!==void 0&&(bt=3);let Lt,Z,dt,xt;if(Q){let gt=gi[Q];Lt=gt.vertexShader,Z=gt.fragmentShader}else{Lt=x.vertexShader,Z=x.fragmentShader;let gt=a.getVertexShaderStage(x),ue=a.getFragmentShaderStage(x);a.update(x,gt,ue),dt=gt.id,xt=ue.id}let Ct=n.getRenderTarget(),mt=n.state.buffers.depth.getReversed(),Ot=P.isInstancedMesh===!0,Pe=P.isBatchedMesh===!0,Dt=!!x.map,ne=!!x.matcap,oe=!!k,Yt=oe&&k.isPMREMTexture===!0,en=!!x.aoMap,ke=!!x.lightMap,yn=!!x.bumpMap&&x.wireframe===!1,Ae=!!x.normalMap,ri=!!x.displacementMap,Ye=!!x.emissiveMap,Un=!!x.metalnessMap,Fn=!!x.roughnessMap,On=x.anisotropy>0,O=x.clearcoat>0,kn=x.diffuseRoughness>0,ye=x.dispersion>0,xe=x.retroreflectivity>0,pt=x.iridescence>0,Be=x.sheen>0,Nt=x.transmission>0,Bt=On&&!!x.anisotropyMap,C=O&&!!x.clearcoatMap,S=O&&!!x.clearcoatNormalMap,V=O&&!!x.clearcoatRoughnessMap,nt=kn&&!!x.diffuseRoughnessMap,j=pt&&!!x.iridescenceMap,ot=pt&&!!x.iridescenceThicknessMap,ht=Be&&!!x.sheenColorMap,Y=Be&&!!x.sheenRoughnessMap,J=!!x.specularMap,lt=!!x.specularColorMap,L=!!x.specularIntensityMap,K=Nt&&!!x.transmissionMap,$=Nt&&!!x.thicknessMap,ct=!!x.gradientMap,st=!!x.alphaMap,at=x.alphaTest>0,Et=!!x.alphaHash,Wt=!!x.extensions,it=pi;x.toneMapped&&(Ct===null||Ct.isXRRenderTarget===!0)&&(it=n.toneMapping);let Rt=Yt?k.isCompressedCubeTexture?k.image[0].mipmaps:k.mipmaps:null,Gt={shaderID:Q,shaderType:x.type,shaderName:x.name,vertexShader:Lt,fragmentShader:Z,defines:x.defines,customVertexShaderID:dt,customFragmentShaderID:xt,isRawShaderMaterial:x.isRawShaderMaterial===!0,glslVersion:x.glslVersion,precision:G,batching:Pe,batchingColor:Pe&&P._colorsTexture!==null,instancing:Ot,instancingColor:Ot&&P.instanceColor!==null,instancingMorph:Ot&&P.morphTexture!==null,outputColorSpace:Ct===null?n.outputColorSpace:Ct.isXRRenderTarget===!0?Ct.texture.colorSpace:Kt.workingColorSpace,alphaToCoverage:!!x.alphaToCoverage,map:Dt,matcap:ne,envMap:oe,envMapMode:oe&&k.mapping,envMapPMREM:Yt,envMapMaxLod:Yt?Rt.length-1:null,envMapSize:Yt?Rt[0].width:null,aoMap:en,lightMap:ke,bumpMap:yn,normalMap:Ae,displacementMap:ri,emissiveMap:Ye,normalMapObjectSpace:Ae&&x.normalMapType===Ag,normalMapTangentSpace:Ae&&x.normalMapType===xu,packedNormalMap:Ae&&x.normalMapType===xu&&$w(x.normalMap.format),metalnessMap:Un,roughnessMap:Fn,anisotropy:On,anisotropyMap:Bt,clearcoat:O,clearcoatMap:C,clearcoatNormalMap:S,clearcoatRoughnessMap:V,diffuseRoughness:kn,diffuseRoughnessMap:nt,dispersion:ye,retroreflection:xe,iridescence:pt,iridescenceMap:j,iridescenceThicknessMap:ot,sheen:Be,sheenColorMap:ht,sheenRoughnessMap:Y,specularMap:J,specularColorMap:lt,specularIntensityMap:L,transmission:Nt,transmissionMap:K,thicknessMap:$,gradientMap:ct,opaque:x.transparent===!1&&x.blending===Gr&&x.alphaToCoverage===!1,alphaMap:st,alphaTest:at,alphaHash:Et,combine:x.combine,mapUv:Dt&&f(x.map.channel),aoMapUv:en&&f(x.aoMap.channel),lightMapUv:ke&&f(x.lightMap.channel),bumpMapUv:yn&&f(x.bumpMap.channel),normalMapUv:Ae&&f(x.normalMap.channel),displacementMapUv:ri&&f(x.displacementMap.channel),emissiveMapUv:Ye&&f(x.emissiveMap.channel),metalnessMapUv:Un&&f(x.metalnessMap.channel),roughnessMapUv:Fn&&f(x.roughnessMap.channel),anisotropyMapUv:Bt&&f(x.anisotropyMap.channel),clearcoatMapUv:C&&f(x.clearcoatMap.channel),clearcoatNormalMapUv:S&&f(x.clearcoatNormalMap.channel),clearcoatRoughnessMapUv:V&&f(x.clearcoatRoughnessMap.channel),diffuseRoughnessMapUv:nt&&f(x.diffuseRoughnessMap.channel),iridescenceMapUv:j&&f(x.iridescenceMap.channel),iridescenceThicknessMapUv:ot&&f(x.iridescenceThicknessMap.channel),sheenColorMapUv:ht&&f(x.sheenColorMap.channel),sheenRoughnessMapUv:Y&&f(x.sheenRoughnessMap.channel),specularMapUv:J&&f(x.specularMap.channel),specularColorMapUv:lt&&f(x.specularColorMap.channel),specularIntensityMapUv:L&&f(x.specularIntensityMap.channel),transmissionMapUv:K&&f(x.transmissionMap.channel),thicknessMapUv:$&&f(x.thicknessMap.channel),alphaMapUv:st&&f(x.alphaMap.channel),vertexTangents:!!I.attributes.tangent&&(Ae||On),vertexNormals:!!I.attributes.normal,vertexColors:x.vertexColors,vertexAlphas:x.vertexColors===!0&&!!I.attributes.color&&I.attributes.color.itemSize===4,pointsUvs:P.isPoints===!0&&!!I.attributes.uv&&(Dt||st),fog:!!B,useFog:x.fog===!0,fogExp2:!!B&&B.isFogExp2,flatShading:x.wireframe===!1&&(x.flatShading===!0||I.attributes.normal===void 0&&Ae===!1&&(x.isMeshLambertMaterial||x.isMeshPhongMaterial||x.isMeshStandardMaterial||x.isMeshPhysicalMaterial)),sizeAttenuation:x.sizeAttenuation===!0,logarithmicDepthBuffer:h,reversedDepthBuffer:mt,skinning:P.isSkinnedMesh===!0,hasPositionAttribute:I.attributes.position!==void 0,morphTargets:I.morphAttributes.position!==void 0,morphNormals:I.morphAttributes.normal!==void 0,morphColors:I.morphAttributes.color!==void 0,morphTargetsCount:et,morphTextureStride:bt,numSunLights:T.sun.length,numDirLights:T.directional.length,numPointLights:T.point.length,numSpotLights:T.spot.length,numSpotLightMaps:T.spotLightMap.length,numRectAreaLights:T.rectArea.length,numHemiLights:T.hemi.length,numSunLightShadows:T.sunShadowMap.length,numDirLightShadows:T.directionalShadowMap.length,numPointLightShadows:T.pointShadowMap.length,numSpotLightShadows:T.spotShadowMap.length,numSpotLightShadowsWithMaps:T.numSpotLightShadowsWithMaps,numLightProbes:T.numLightProbes,numLightProbeGrids:F.filter(gt=>gt.texture!==null).length,numClippingPlanes:r.numPlanes,numClipIntersection:r.numIntersection,dithering:x.dithering,shadowMapEnabled:n.shadowMap.enabled&&D.length>0,shadowMapType:n.shadowMap.type,toneMapping:it,decodeVideoTexture:Dt&&x.map.isVideoTexture===!0&&Kt.getTransfer(x.map.colorSpace)===ce,decodeVideoTextureEmissive:Ye&&x.emissiveMap.isVideoTexture===!0&&Kt.getTransfer(x.emissiveMap.colorSpace)===ce,premultipliedAlpha:x.premultipliedAlpha,doubleSided:x.side===un,flipSided:x.side===vn,useDepthPacking:x.depthPacking>=0,depthPacking:x.depthPacking||0,index0AttributeName:x.index0AttributeName,extensionClipCullDistance:Wt&&x.extensions.clipCullDistance===!0&&e.has("WEBGL_clip_cull_distance"),extensionMultiDraw:(Wt&&x.extensions.multiDraw===!0||Pe)&&e.has("WEBGL_multi_draw"),rendererExtensionParallelShaderCompile:e.has("KHR_parallel_shader_compile"),customProgramCacheKey:x.customProgramCacheKey()};return Gt.vertexUv1s=l.has(1),Gt.vertexUv2s=l.has(2),Gt.vertexUv3s=l.has(3),l.clear(),Gt}function v(x){let T=[];if(x.shaderID?T.push(x.shaderID):(T.push(x.customVertexShaderID),T.push(x.customFragmentShaderID)),x.defines!==void 0)for(let D in x.defines)T.push(D),T.push(x.defines[D]);return x.isRawShaderMaterial===!1&&(_(T,x),m(T,x),T.push(n.outputColorSpace)),T.push(x.customProgramCacheKey),T.join()}function _(x,T){x.push(T.precision),x.push(T.outputColorSpace),x.push(T.envMapMode),x.push(T.envMapPMREM),x.push(T.envMapMaxLod),x.push(T.envMapSize),x.push(T.mapUv),x.push(T.alphaMapUv),x.push(T.lightMapUv),x.push(T.aoMapUv),x.push(T.bumpMapUv),x.push(T.normalMapUv),x.push(T.displacementMapUv),x.push(T.emissiveMapUv),x.push(T.metalnessMapUv),x.push(T.roughnessMapUv),x.push(T.anisotropyMapUv),x.push(T.clearcoatMapUv),x.push(T.clearcoatNormalMapUv),x.push(T.clearcoatRoughnessMapUv),x.push(T.diffuseRoughnessMapUv),x.push(T.iridescenceMapUv),x.push(T.iridescenceThicknessMapUv),x.push(T.sheenColorMapUv),x.push(T.sheenRoughnessMapUv),x.push(T.specularMapUv),x.push(T.specularColorMapUv),x.push(T.specularIntensityMapUv),x.push(T.transmissionMapUv),x.push(T.thicknessMapUv),x.push(T.combine),x.push(T.fogExp2),x.push(T.sizeAttenuation),x.push(T.morphTargetsCount),x.push(T.numSunLights),x.push(T.numDirLights),x.push(T.numPointLights),x.push(T.numSpotLights),x.push(T.numSpotLightMaps),x.push(T.numHemiLights),x.push(T.numRectAreaLights),x.push(T.numSunLightShadows),x.push(T.numDirLightShadows),x.push(T.numPointLightShadows),x.push(T.numSpotLightShadows),x.push(T.numSpotLightShadowsWithMaps),x.push(T.numLightProbes),x.push(T.numLightProbeGrids),x.push(T.shadowMapType),x.push(T.toneMapping),x.push(T.numClippingPlanes),x.push(T.numClipIntersection),x.push(T.depthPacking)}function m(x,T){o.disableAll(),T.instancing&&o.enable(0),T.instancingColor&&o.enable(1),T.instancingMorph&&o.enable(2),T.matcap&&o.enable(3),T.envMap&&o.enable(4),T.normalMapObjectSpace&&o.enable(5),T.normalMapTangentSpace&&o.enable(6),T.clearcoat&&o.enable(7),T.iridescence&&o.enable(8),T.alphaTest&&o.enable(9),T.vertexColors&&o.enable(10),T.vertexAlphas&&o.enable(11),T.vertexUv1s&&o.enable(12),T.vertexUv2s&&o.enable(13),T.vertexUv3s&&o.enable(14),T.vertexTangents&&o.enable(15),T.anisotropy&&o.enable(16),T.alphaHash&&o.enable(17),T.batching&&o.enable(18),T.dispersion&&o.enable(19),T.retroreflection&&o.enable(24),T.diffuseRoughness&&o.enable(25),T.batchingColor&&o.enable(20),T.gradientMap&&o.enable(21),T.packedNormalMap&&o.enable(22),T.vertexNormals&&o.enable(23),x.push(o.mask),o.disableAll(),T.fog&&o.enable(0),T.useFog&&o.enable(1),T.flatShading&&o.enable(2),T.logarithmicDepthBuffer&&o.enable(3),T.reversedDepthBuffer&&o.enable(4),T.skinning&&o.enable(5),T.morphTargets&&o.enable(6),T.morphNormals&&o.enable(7),T.morphColors&&o.enable(8),T.premultipliedAlpha&&o.enable(9),T.shadowMapEnabled&&o.enable(10),T.doubleSided&&o.enable(11),T.flipSided&&o.enable(12),T.useDepthPacking&&o.enable(13),T.dithering&&o.enable(14),T.transmission&&o.enable(15),T.sheen&&o.enable(16),T.opaque&&o.enable(17),T.pointsUvs&&o.enable(18),T.decodeVideoTexture&&o.enable(19),T.decodeVideoTextureEmissive&&o.enable(20),T.alphaToCoverage&&o.enable(21),T.numLightProbeGrids>0&&o.enable(22),T.hasPositionAttribute&&o.enable(23),x.push(o.mask)}function y(x){let T=d[x.type],D;if(T){let R=gi[T];D=Xg.clone(R.uniforms)}else D=x.uniforms;return D}function M(x,T){let D=u.get(T);return D!==void 0?++D.usedTimes:(D=new Xw(n,T,x,s),c.push(D),u.set(T,D)),D}function b(x){if(--x.usedTimes===0){let T=c.indexOf(x);c[T]=c[c.length-1],c.pop(),u.delete(x.cacheKey),x.destroy()}}function E(x){a.remove(x)}function A(){a.dispose()}return{getParameters:g,getProgramCacheKey:v,getUniforms:y,acquireProgram:M,releaseProgram:b,releaseShaderCache:E,programs:c,dispose:A}}function Zw(){let n=new WeakMap;function t(o){return n.has(o)}function e(o){let a=n.get(o);return a===void 0&&(a={},n.set(o,a)),a}function i(o){n.delete(o)}function s(o,a,l){n.get(o)[a]=l}function r(){n=new WeakMap}return{has:t,get:e,remove:i,update:s,dispose:r}}function Jw(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.material.id!==t.material.id?n.material.id-t.material.id:n.materialVariant!==t.materialVariant?n.materialVariant-t.materialVariant:n.z!==t.z?n.z-t.z:n.id-t.id}function h0(n,t){return n.groupOrder!==t.groupOrder?n.groupOrder-t.groupOrder:n.renderOrder!==t.renderOrder?n.renderOrder-t.renderOrder:n.z!==t.z?t.z-n.z:n.id-t.id}function f0(){let n=[],t=0,e=[],i=[],s=[];function r(){t=0,e.length=0,i.length=0,s.length=0}function o(d){let f=0;return d.isInstancedMesh&&(f+=2),d.isSkinnedMesh&&(f+=1),f}function a(d,f,g,v,_,m){let y=n[t];return y===void 0?(y={id:d.id,object:d,geometry:f,material:g,materialVariant:o(d),groupOrder:v,renderOrder:d.renderOrder,z:_,group:m},n[t]=y):(y.id=d.id,y.object=d,y.geometry=f,y.material=g,y.materialVariant=o(d),y.groupOrder=v,y.renderOrder=d.renderOrder,y.z=_,y.group=m),t++,y}function l(d,f,g,v,_,m,y){y.reversedDepth===!0&&(_=-_);let M=a(d,f,g,v,_,m);g.transmission>0?i.push(M):g.transparent===!0?s.push(M):e.push(M)}function c(d,f,g,v,_,m){let y=a(d,f,g,v,_,m);g.transmission>0?i.unshift(y):g.transparent===!0?s.unshift(y):e.unshift(y)}function u(d,f){e.length>1&&e.sort(d||Jw),i.length>1&&i.sort(f||h0),s.length>1&&s.sort(f||h0)}function h(){for(let d=t,f=n.length;d<f;d++){let g=n[d];if(g.id===null)break;g.id=null,g.object=null,g.geometry=null,g.material=null,g.group=null}}return{opaque:e,transmissive:i,transparent:s,init:r,push:l,unshift:c,finish:h,sort:u}}function Kw(){let n=new WeakMap;function t(i,s){let r=n.get(i),o;return r===void 0?(o=new f0,n.set(i,[o])):s>=r.length?(o=new f0,r.push(o)):o=r[s],o}function e(){n=new WeakMap}return{get:t,dispose:e}}function jw(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={direction:new N,color:new Vt};break;case"SpotLight":e={position:new N,direction:new N,color:new Vt,distance:0,coneCos:0,penumbraCos:0,decay:0};break;case"PointLight":e={position:new N,color:new Vt,distance:0,decay:0};break;case"HemisphereLight":e={direction:new N,skyColor:new Vt,groundColor:new Vt};break;case"RectAreaLight":e={color:new Vt,position:new N,halfWidth:new N,halfHeight:new N};break}return n[t.id]=e,e}}}function Qw(){let n={};return{get:function(t){if(n[t.id]!==void 0)return n[t.id];let e;switch(t.type){case"SunLight":case"DirectionalLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt};break;case"SpotLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt};break;case"PointLight":e={shadowIntensity:1,shadowBias:0,shadowNormalBias:0,shadowRadius:1,shadowMapSize:new rt,shadowCameraNear:1,shadowCameraFar:1e3};break}return n[t.id]=e,e}}}var t1=0;function e1(n,t){return(t.castShadow?2:0)-(n.castShadow?2:0)+(t.map?1:0)-(n.map?1:0)}function n1(n){let t=new jw,e=Qw(),i={version:0,hash:{sunLength:-1,directionalLength:-1,pointLength:-1,spotLength:-1,rectAreaLength:-1,hemiLength:-1,numSunShadows:-1,numDirectionalShadows:-1,numPointShadows:-1,numSpotShadows:-1,numSpotMaps:-1,numLightProbes:-1},ambient:[0,0,0],probe:[],sun:[],sunShadow:[],sunShadowMap:[],sunShadowMatrix:[],sunShadowCascade:[],directional:[],directionalShadow:[],directionalShadowMap:[],directionalShadowMatrix:[],spot:[],spotLightMap:[],spotShadow:[],spotShadowMap:[],spotLightMatrix:[],rectArea:[],rectAreaLTC1:null,rectAreaLTC2:null,point:[],pointShadow:[],pointShadowMap:[],pointShadowMatrix:[],hemi:[],numSpotLightShadowsWithMaps:0,numLightProbes:0};for(let c=0;c<9;c++)i.probe.push(new N);let s=new N,r=new ee,o=new ee;function a(c){let u=0,h=0,d=0;for(let F=0;F<9;F++)i.probe[F].set(0,0,0);let f=0,g=0,v=0,_=0,m=0,y=0,M=0,b=0,E=0,A=0,x=0,T=0,D=0,R=0;c.sort(e1);for(let F=0,B=c.length;F<B;F++){let I=c[F],W=I.color,X=I.intensity,k=I.distance,Q=null;if(I.shadow&&I.shadow.map&&(I.shadow.map.texture.format===fs?Q=I.shadow.map.texture:Q=I.shadow.map.depthTexture||I.shadow.map.texture),I.isAmbientLight)u+=W.r*X,h+=W.g*X,d+=W.b*X;else if(I.isLightProbe){for(let G=0;G<9;G++)i.probe[G].addScaledVector(I.sh.coefficients[G],X);R++}else if(I.isSunLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize.copy(tt.mapSize).multiply(tt.getFrameExtents()),i.sunShadow[g]=et,i.sunShadowMap[g]=Q;let bt=tt.getViewportCount();for(let Lt=0;Lt<bt;Lt++)i.sunShadowMatrix[v+Lt]=tt.getMatrix(Lt),i.sunShadowCascade[v+Lt]=tt._cascadeData[Lt];v+=bt,g++}i.sun[f]=G,f++}else if(I.isDirectionalLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.directionalShadow[_]=et,i.directionalShadowMap[_]=Q,i.directionalShadowMatrix[_]=I.shadow.matrix,E++}i.directional[_]=G,_++}else if(I.isSpotLight){let G=t.get(I);G.position.setFromMatrixPosition(I.matrixWorld),G.color.copy(W).multiplyScalar(X),G.distance=k,G.coneCos=Math.cos(I.angle),G.penumbraCos=Math.cos(I.angle*(1-I.penumbra)),G.decay=I.decay,i.spot[y]=G;let tt=I.shadow;if(I.map&&(i.spotLightMap[T]=I.map,T++,tt.updateMatrices(I),I.castShadow&&D++),i.spotLightMatrix[y]=tt.matrix,I.castShadow){let et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,i.spotShadow[y]=et,i.spotShadowMap[y]=Q,x++}y++}else if(I.isRectAreaLight){let G=t.get(I);G.color.copy(W).multiplyScalar(X),G.halfWidth.set(I.width*.5,0,0),G.halfHeight.set(0,I.height*.5,0),i.rectArea[M]=G,M++}else if(I.isPointLight){let G=t.get(I);if(G.color.copy(I.color).multiplyScalar(I.intensity),G.distance=I.distance,G.decay=I.decay,I.castShadow){let tt=I.shadow,et=e.get(I);et.shadowIntensity=tt.intensity,et.shadowBias=tt.bias,et.shadowNormalBias=tt.normalBias,et.shadowRadius=tt.radius,et.shadowMapSize=tt.mapSize,et.shadowCameraNear=tt.camera.near,et.shadowCameraFar=tt.camera.far,i.pointShadow[m]=et,i.pointShadowMap[m]=Q,i.pointShadowMatrix[m]=I.shadow.matrix,A++}i.point[m]=G,m++}else if(I.isHemisphereLight){let G=t.get(I);G.skyColor.copy(I.color).multiplyScalar(X),G.groundColor.copy(I.groundColor).multiplyScalar(X),i.hemi[b]=G,b++}}M>0&&(n.has("OES_texture_float_linear")===!0?(i.rectAreaLTC1=_t.LTC_FLOAT_1,i.rectAreaLTC2=_t.LTC_FLOAT_2):(i.rectAreaLTC1=_t.LTC_HALF_1,i.rectAreaLTC2=_t.LTC_HALF_2)),i.ambient[0]=u,i.ambient[1]=h,i.ambient[2]=d;let P=i.hash;(P.sunLength!==f||P.directionalLength!==_||P.pointLength!==m||P.spotLength!==y||P.rectAreaLength!==M||P.hemiLength!==b||P.numSunShadows!==g||P.numDirectionalShadows!==E||P.numPointShadows!==A||P.numSpotShadows!==x||P.numSpotMaps!==T||P.numLightProbes!==R)&&(i.sun.length=f,i.directional.length=_,i.spot.length=y,i.rectArea.length=M,i.point.length=m,i.hemi.length=b,i.sunShadow.length=g,i.sunShadowMap.length=g,i.sunShadowMatrix.length=v,i.sunShadowCascade.length=v,i.directionalShadow.length=E,i.directionalShadowMap.length=E,i.directionalShadowMatrix.length=E,i.pointShadow.length=A,i.pointShadowMap.length=A,i.pointShadowMatrix.length=A,i.spotShadow.length=x,i.spotShadowMap.length=x,i.spotLightMatrix.length=x+T-D,i.spotLightMap.length=T,i.numSpotLightShadowsWithMaps=D,i.numLightProbes=R,P.sunLength=f,P.directionalLength=_,P.pointLength=m,P.spotLength=y,P.rectAreaLength=M,P.hemiLength=b,P.numSunShadows=g,P.numDirectionalShadows=E,P.numPointShadows=A,P.numSpotShadows=x,P.numSpotMaps=T,P.numLightProbes=R,i.version=t1++)}function l(c,u){let h=0,d=0,f=0,g=0,v=0,_=0,m=u.matrixWorldInverse;for(let y=0,M=c.length;y<M;y++){let b=c[y];if(b.isSunLight){let E=i.sun[h];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(m),h++}else if(b.isDirectionalLight){let E=i.directional[d];E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),d++}else if(b.isSpotLight){let E=i.spot[g];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),E.direction.setFromMatrixPosition(b.matrixWorld),s.setFromMatrixPosition(b.target.matrixWorld),E.direction.sub(s),E.direction.transformDirection(m),g++}else if(b.isRectAreaLight){let E=i.rectArea[v];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),o.identity(),r.copy(b.matrixWorld),r.premultiply(m),o.extractRotation(r),E.halfWidth.set(b.width*.5,0,0),E.halfHeight.set(0,b.height*.5,0),E.halfWidth.applyMatrix4(o),E.halfHeight.applyMatrix4(o),v++}else if(b.isPointLight){let E=i.point[f];E.position.setFromMatrixPosition(b.matrixWorld),E.position.applyMatrix4(m),f++}else if(b.isHemisphereLight){let E=i.hemi[_];E.direction.setFromMatrixPosition(b.matrixWorld),E.direction.transformDirection(m),_++}}}return{setup:a,setupView:l,state:i}}function d0(n){let t=new n1(n),e=[],i=[],s=[];function r(h){u.camera=h,e.length=0,i.length=0,s.length=0}function o(h){h.isLightProbeGrid?s.push(h):e.push(h)}function a(h){i.push(h)}function l(){t.setup(e),s.sort((h,d)=>h.priority-d.priority||h.id-d.id)}function c(h){t.setupView(e,h)}let u={lightsArray:e,shadowsArray:i,lightProbeGridArray:s,camera:null,lights:t,transmissionRenderTarget:{},textureUnits:0};return{init:r,state:u,setupLights:l,setupLightsView:c,pushLight:o,pushShadow:a}}function i1(n){let t=new WeakMap;function e(s,r=0){let o=t.get(s),a;return o===void 0?(a=new d0(n),t.set(s,[a])):r>=o.length?(a=new d0(n),o.push(a)):a=o[r],a}function i(){t=new WeakMap}return{get:e,dispose:i}}var s1=`void main() {
	gl_Position = vec4( position, 1.0 );
}`,r1=`uniform sampler2D shadow_pass;
uniform vec2 resolution;
uniform float radius;
void main() {
	const float samples = float( VSM_SAMPLES );
	float mean = 0.0;
	float squared_mean = 0.0;
	float uvStride = samples <= 1.0 ? 0.0 : 2.0 / ( samples - 1.0 );
	float uvStart = samples <= 1.0 ? 0.0 : - 1.0;
	for ( float i = 0.0; i < samples; i ++ ) {
		float uvOffset = uvStart + i * uvStride;
		#ifdef HORIZONTAL_PASS
			vec2 distribution = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( uvOffset, 0.0 ) * radius ) / resolution ).rg;
			mean += distribution.x;
			squared_mean += distribution.y * distribution.y + distribution.x * distribution.x;
		#else
			float depth = texture2D( shadow_pass, ( gl_FragCoord.xy + vec2( 0.0, uvOffset ) * radius ) / resolution ).r;
			mean += depth;
			squared_mean += depth * depth;
		#endif
	}
	mean = mean / samples;
	squared_mean = squared_mean / samples;
	float std_dev = sqrt( max( 0.0, squared_mean - mean * mean ) );
	gl_FragColor = vec4( mean, std_dev, 0.0, 1.0 );
}`,o1=[new N(1,0,0),new N(-1,0,0),new N(0,1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1)],a1=[new N(0,-1,0),new N(0,-1,0),new N(0,0,1),new N(0,0,-1),new N(0,-1,0),new N(0,-1,0)],p0=new ee,wa=new N,jf=new N;function l1(n,t,e){let i=new es,s=new rt,r=new rt,o=new Te,a=new yc,l=new xc,c={},u=e.maxTextureSize,h={[us]:vn,[vn]:us,[un]:un},d=new Ln({defines:{VSM_SAMPLES:8},uniforms:{shadow_pass:{value:null},resolution:{value:new rt},radius:{value:4}},vertexShader:s1,fragmentShader:r1}),f=d.clone();f.defines.HORIZONTAL_PASS=1;let g=new he;g.setAttribute("position",new He(new Float32Array([-1,-1,.5,3,-1,.5,-1,3,.5]),3));let v=new Le(g,d),_=this;this.enabled=!1,this.autoUpdate=!0,this.needsUpdate=!1,this.type=ga;let m=this.type;this.render=function(A,x,T){if(_.enabled===!1||_.autoUpdate===!1&&_.needsUpdate===!1||A.length===0)return;this.type===ig&&(It("WebGLShadowMap: PCFSoftShadowMap has been removed. Using PCFShadowMap instead."),this.type=ga);let D=n.getRenderTarget(),R=n.getActiveCubeFace(),P=n.getActiveMipmapLevel(),F=n.state;F.setBlending(Fs),F.buffers.depth.getReversed()===!0?F.buffers.color.setClear(0,0,0,0):F.buffers.color.setClear(1,1,1,1),F.buffers.depth.setTest(!0),F.setScissorTest(!1);let B=m!==this.type;B&&x.traverse(function(I){I.material&&(Array.isArray(I.material)?I.material.forEach(W=>W.needsUpdate=!0):I.material.needsUpdate=!0)});for(let I=0,W=A.length;I<W;I++){let X=A[I],k=X.shadow;if(k===void 0){It("WebGLShadowMap:",X,"has no shadow.");continue}if(k.autoUpdate===!1&&k.needsUpdate===!1)continue;s.copy(k.mapSize);let Q=k.getFrameExtents();s.multiply(Q),r.copy(k.mapSize),(s.x>u||s.y>u)&&(s.x>u&&(r.x=Math.floor(u/Q.x),s.x=r.x*Q.x,k.mapSize.x=r.x),s.y>u&&(r.y=Math.floor(u/Q.y),s.y=r.y*Q.y,k.mapSize.y=r.y));let G=n.state.buffers.depth.getReversed();if(k.camera._reversedDepth=G,k.map===null||B===!0){if(k.map!==null&&(k.map.depthTexture!==null&&(k.map.depthTexture.dispose(),k.map.depthTexture=null),k.map.dispose()),this.type===Vr){if(X.isPointLight){It("WebGLShadowMap: VSM shadow maps are not supported for PointLights. Use PCF or BasicShadowMap instead.");continue}k.map=new In(s.x,s.y,{format:fs,type:ii,minFilter:_n,magFilter:_n,generateMipmaps:!1}),k.map.texture.name=X.name+".shadowMap",k.map.depthTexture=new Ui(s.x,s.y,Xn),k.map.depthTexture.name=X.name+".shadowMapDepth",k.map.depthTexture.format=Li,k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=je,k.map.depthTexture.magFilter=je}else X.isPointLight?(k.map=new Aa(s.x),k.map.depthTexture=new Jo(s.x,ni)):(k.map=new In(s.x,s.y),k.map.depthTexture=new Ui(s.x,s.y,ni)),k.map.depthTexture.name=X.name+".shadowMap",k.map.depthTexture.format=Li,this.type===ga?(k.map.depthTexture.compareFunction=G?Bf:kf,k.map.depthTexture.minFilter=_n,k.map.depthTexture.magFilter=_n):(k.map.depthTexture.compareFunction=null,k.map.depthTexture.minFilter=je,k.map.depthTexture.magFilter=je);k.camera.updateProjectionMatrix()}k.map.isWebGLCubeRenderTarget!==!0&&(k.map.width!==s.x||k.map.height!==s.y)&&k.map.setSize(s.x,s.y);let tt=k.map.isWebGLCubeRenderTarget?6:k.getViewportCount();X.isPointLight!==!0&&k.updateMatrices(X,T);let et=(k.camera.layers.mask&4294967294)!==0?k.camera.layers:T.layers;for(let bt=0;bt<tt;bt++){let Lt=k.getCamera(bt);if(X.isPointLight){let Z=k.camera,dt=k.matrix,xt=X.distance||Z.far;xt!==Z.far&&(Z.far=xt,Z.updateProjectionMatrix()),wa.setFromMatrixPosition(X.matrixWorld),Z.position.copy(wa),jf.copy(Z.position),jf.add(o1[bt]),Z.up.copy(a1[bt]),Z.lookAt(jf),Z.updateMatrixWorld(),dt.makeTranslation(-wa.x,-wa.y,-wa.z),p0.multiplyMatrices(Z.projectionMatrix,Z.matrixWorldInverse),k._frustum.setFromProjectionMatrix(p0,Z.coordinateSystem,Z.reversedDepth)}if(k.map.isWebGLCubeRenderTarget)n.setRenderTarget(k.map,bt),n.clear();else{bt===0&&(n.setRenderTarget(k.map),n.clear());let Z=k.getViewport(bt);o.set(r.x*Z.x,r.y*Z.y,r.x*Z.z,r.y*Z.w),F.viewport(o)}i=k.getFrustum(bt),b(x,T,Lt,X,et,this.type)}k.isPointLightShadow!==!0&&this.type===Vr&&y(k,T),k.needsUpdate=!1}m=this.type,_.needsUpdate=!1,n.setRenderTarget(D,R,P)};function y(A,x){let T=t.update(v);d.defines.VSM_SAMPLES!==A.blurSamples&&(d.defines.VSM_SAMPLES=A.blurSamples,f.defines.VSM_SAMPLES=A.blurSamples,d.needsUpdate=!0,f.needsUpdate=!0),A.mapPass===null?A.mapPass=new In(s.x,s.y,{format:fs,type:ii}):(A.mapPass.width!==A.map.width||A.mapPass.height!==A.map.height)&&A.mapPass.setSize(A.map.width,A.map.height),d.uniforms.shadow_pass.value=A.map.depthTexture,d.uniforms.resolution.value.set(A.map.width,A.map.height),d.uniforms.radius.value=A.radius,n.setRenderTarget(A.mapPass),n.clear(),n.renderBufferDirect(x,null,T,d,v,null),f.uniforms.shadow_pass.value=A.mapPass.texture,f.uniforms.resolution.value.set(A.map.width,A.map.height),f.uniforms.radius.value=A.radius,n.setRenderTarget(A.map),n.clear(),n.renderBufferDirect(x,null,T,f,v,null)}function M(A,x,T,D){let R=null,P=T.isPointLight===!0?A.customDistanceMaterial:A.customDepthMaterial;if(P!==void 0)R=P;else if(R=T.isPointLight===!0?l:a,n.localClippingEnabled&&x.clipShadows===!0&&Array.isArray(x.clippingPlanes)&&x.clippingPlanes.length!==0||x.displacementMap&&x.displacementScale!==0||x.alphaMap&&x.alphaTest>0||x.map&&x.alphaTest>0||x.alphaToCoverage===!0){let F=R.uuid,B=x.uuid,I=c[F];I===void 0&&(I={},c[F]=I);let W=I[B];W===void 0&&(W=R.clone(),I[B]=W,x.addEventListener("dispose",E)),R=W}if(R.visible=x.visible,R.wireframe=x.wireframe,D===Vr?R.side=x.shadowSide!==null?x.shadowSide:x.side:R.side=x.shadowSide!==null?x.shadowSide:h[x.side],R.alphaMap=x.alphaMap,R.alphaTest=x.alphaToCoverage===!0?.5:x.alphaTest,R.map=x.map,R.clipShadows=x.clipShadows,R.clippingPlanes=x.clippingPlanes,R.clipIntersection=x.clipIntersection,R.displacementMap=x.displacementMap,R.displacementScale=x.displacementScale,R.displacementBias=x.displacementBias,R.wireframeLinewidth=x.wireframeLinewidth,R.linewidth=x.linewidth,T.isPointLight===!0&&R.isMeshDistanceMaterial===!0){let F=n.properties.get(R);F.light=T}return R}function b(A,x,T,D,R,P){if(A.visible===!1)return;if(A.layers.test(R)&&(A.isMesh||A.isLine||A.isPoints)&&(A.castShadow||A.receiveShadow&&P===Vr)&&(!A.frustumCulled||A.intersectsFrustum(i))){A.modelViewMatrix.multiplyMatrices(T.matrixWorldInverse,A.matrixWorld);let I=t.update(A),W=A.material;if(Array.isArray(W)){let X=I.groups;for(let k=0,Q=X.length;k<Q;k++){let G=X[k],tt=W[G.materialIndex];if(tt&&tt.visible){let et=M(A,tt,D,P);A.onBeforeShadow(n,A,x,T,I,et,G),n.renderBufferDirect(T,null,I,et,A,G),A.onAfterShadow(n,A,x,T,I,et,G)}}}else if(W.visible){let X=M(A,W,D,P);A.onBeforeShadow(n,A,x,T,I,X,null),n.renderBufferDirect(T,null,I,X,A,null),A.onAfterShadow(n,A,x,T,I,X,null)}}let B=A.children;for(let I=0,W=B.length;I<W;I++)b(B[I],x,T,D,R,P)}function E(A){A.target.removeEventListener("dispose",E);for(let T in c){let D=c[T],R=A.target.uuid;R in D&&(D[R].dispose(),delete D[R])}}}function c1(n,t){function e(){let L=!1,K=new Te,$=null,ct=new Te(0,0,0,0);return{setMask:function(st){$!==st&&!L&&(n.colorMask(st,st,st,st),$=st)},setLocked:function(st){L=st},setClear:function(st,at,Et,Wt,it){it===!0&&(st*=Wt,at*=Wt,Et*=Wt),K.set(st,at,Et,Wt),ct.equals(K)===!1&&(n.clearColor(st,at,Et,Wt),ct.copy(K))},reset:function(){L=!1,$=null,ct.set(-1,0,0,0)}}}function i(){let L=!1,K=!1,$=null,ct=null,st=null;return{setReversed:function(at){if(K!==at){let Et=t.get("EXT_clip_control");at?Et.clipControlEXT(Et.LOWER_LEFT_EXT,Et.ZERO_TO_ONE_EXT):Et.clipControlEXT(Et.LOWER_LEFT_EXT,Et.NEGATIVE_ONE_TO_ONE_EXT),K=at;let Wt=st;st=null,this.setClear(Wt)}},getReversed:function(){return K},setTest:function(at){at?mt(n.DEPTH_TEST):Ot(n.DEPTH_TEST)},setMask:function(at){$!==at&&!L&&(n.depthMask(at),$=at)},setFunc:function(at){if(K&&(at=Og[at]),ct!==at){switch(at){case Zl:n.depthFunc(n.NEVER);break;case Jl:n.depthFunc(n.ALWAYS);break;case Kl:n.depthFunc(n.LESS);break;case Cr:n.depthFunc(n.LEQUAL);break;case jl:n.depthFunc(n.EQUAL);break;case Ql:n.depthFunc(n.GEQUAL);break;case tc:n.depthFunc(n.GREATER);break;case ec:n.depthFunc(n.NOTEQUAL);break;default:n.depthFunc(n.LEQUAL)}ct=at}},setLocked:function(at){L=at},setClear:function(at){st!==at&&(st=at,K&&(at=1-at),n.clearDepth(at))},reset:function(){L=!1,$=null,ct=null,st=null,K=!1}}}function s(){let L=!1,K=null,$=null,ct=null,st=null,at=null,Et=null,Wt=null,it=null;return{setTest:function(Rt){L||(Rt?mt(n.STENCIL_TEST):Ot(n.STENCIL_TEST))},setMask:function(Rt){K!==Rt&&!L&&(n.stencilMask(Rt),K=Rt)},setFunc:function(Rt,Gt,gt){($!==Rt||ct!==Gt||st!==gt)&&(n.stencilFunc(Rt,Gt,gt),$=Rt,ct=Gt,st=gt)},setOp:function(Rt,Gt,gt){(at!==Rt||Et!==Gt||Wt!==gt)&&(n.stencilOp(Rt,Gt,gt),at=Rt,Et=Gt,Wt=gt)},setLocked:function(Rt){L=Rt},setClear:function(Rt){it!==Rt&&(n.clearStencil(Rt),it=Rt)},reset:function(){L=!1,K=null,$=null,ct=null,st=null,at=null,Et=null,Wt=null,it=null}}}let r=new e,o=new i,a=new s,l={},c=new WeakMap,u={},h={},d={},f=new WeakMap,g=[],v=null,_=!1,m=null,y=null,M=null,b=null,E=null,A=null,x=null,T=new Vt(0,0,0),D=0,R=!1,P=null,F=null,B=null,I=null,W=null,X=n.getParameter(n.MAX_COMBINED_TEXTURE_IMAGE_UNITS),k=!1,Q=0,G=n.getParameter(n.VERSION);G.indexOf("WebGL")!==-1?(Q=parseFloat(/^WebGL (\d)/.exec(G)[1]),k=Q>=1):G.indexOf("OpenGL ES")!==-1&&(Q=parseFloat(/^OpenGL ES (\d)/.exec(G)[1]),k=Q>=2);let tt=null,et={},bt=n.getParameter(n.SCISSOR_BOX),Lt=n.getParameter(n.VIEWPORT),Z=new Te().fromArray(bt),dt=new Te().fromArray(Lt);function xt(L,K,$,ct){let st=new Uint8Array(4),at=n.createTexture();n.bindTexture(L,at),n.texParameteri(L,n.TEXTURE_MIN_FILTER,n.NEAREST),n.texParameteri(L,n.TEXTURE_MAG_FILTER,n.NEAREST);for(let Et=0;Et<$;Et++)L===n.TEXTURE_3D||L===n.TEXTURE_2D_ARRAY?n.texImage3D(K,0,n.RGBA,1,1,ct,0,n.RGBA,n.UNSIGNED_BYTE,st):n.texImage2D(K+Et,0,n.RGBA,1,1,0,n.RGBA,n.UNSIGNED_BYTE,st);return at}let Ct={};Ct[n.TEXTURE_2D]=xt(n.TEXTURE_2D,n.TEXTURE_2D,1),Ct[n.TEXTURE_CUBE_MAP]=xt(n.TEXTURE_CUBE_MAP,n.TEXTURE_CUBE_MAP_POSITIVE_X,6),Ct[n.TEXTURE_2D_ARRAY]=xt(n.TEXTURE_2D_ARRAY,n.TEXTURE_2D_ARRAY,1,1),Ct[n.TEXTURE_3D]=xt(n.TEXTURE_3D,n.TEXTURE_3D,1,1),r.setClear(0,0,0,1),o.setClear(1),a.setClear(0),mt(n.DEPTH_TEST),o.setFunc(Cr),yn(!1),Ae(yf),mt(n.CULL_FACE),en(Fs);function mt(L){u[L]!==!0&&(n.enable(L),u[L]=!0)}function Ot(L){u[L]!==!1&&(n.disable(L),u[L]=!1)}function Pe(L,K){return d[L]!==K?(n.bindFramebuffer(L,K),d[L]=K,L===n.DRAW_FRAMEBUFFER&&(d[n.FRAMEBUFFER]=K),L===n.FRAMEBUFFER&&(d[n.DRAW_FRAMEBUFFER]=K),!0):!1}function Dt(L,K){let $=g,ct=!1;if(L){$=f.get(K),$===void 0&&($=[],f.set(K,$));let st=L.textures;if($.length!==st.length||$[0]!==n.COLOR_ATTACHMENT0){for(let at=0,Et=st.length;at<Et;at++)$[at]=n.COLOR_ATTACHMENT0+at;$.length=st.length,ct=!0}}else $[0]!==n.BACK&&($[0]=n.BACK,ct=!0);ct&&n.drawBuffers($)}function ne(L){return v!==L?(n.useProgram(L),v=L,!0):!1}let oe={[Os]:n.FUNC_ADD,[rg]:n.FUNC_SUBTRACT,[og]:n.FUNC_REVERSE_SUBTRACT};oe[ag]=n.MIN,oe[lg]=n.MAX;let Yt={[cg]:n.ZERO,[ug]:n.ONE,[hg]:n.SRC_COLOR,[Mf]:n.SRC_ALPHA,[_g]:n.SRC_ALPHA_SATURATE,[mg]:n.DST_COLOR,[dg]:n.DST_ALPHA,[fg]:n.ONE_MINUS_SRC_COLOR,[Sf]:n.ONE_MINUS_SRC_ALPHA,[gg]:n.ONE_MINUS_DST_COLOR,[pg]:n.ONE_MINUS_DST_ALPHA,[vg]:n.CONSTANT_COLOR,[yg]:n.ONE_MINUS_CONSTANT_COLOR,[xg]:n.CONSTANT_ALPHA,[bg]:n.ONE_MINUS_CONSTANT_ALPHA};function en(L,K,$,ct,st,at,Et,Wt,it,Rt){if(L===Fs){_===!0&&(Ot(n.BLEND),_=!1);return}if(_===!1&&(mt(n.BLEND),_=!0),L!==sg){if(L!==m||Rt!==R){if((y!==Os||E!==Os)&&(n.blendEquation(n.FUNC_ADD),y=Os,E=Os),Rt)switch(L){case Gr:n.blendFuncSeparate(n.ONE,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case hs:n.blendFunc(n.ONE,n.ONE);break;case xf:n.blendFuncSeparate(n.ZERO,n.ONE_MINUS_SRC_COLOR,n.ZERO,n.ONE);break;case bf:n.blendFuncSeparate(n.DST_COLOR,n.ONE_MINUS_SRC_ALPHA,n.ZERO,n.ONE);break;default:Ft("WebGLState: Invalid blending: ",L);break}else switch(L){case Gr:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE_MINUS_SRC_ALPHA,n.ONE,n.ONE_MINUS_SRC_ALPHA);break;case hs:n.blendFuncSeparate(n.SRC_ALPHA,n.ONE,n.ONE,n.ONE);break;case xf:Ft("WebGLState: SubtractiveBlending requires material.premultipliedAlpha = true");break;case bf:Ft("WebGLState: MultiplyBlending requires material.premultipliedAlpha = true");break;default:Ft("WebGLState: Invalid blending: ",L);break}M=null,b=null,A=null,x=null,T.set(0,0,0),D=0,m=L,R=Rt}return}st=st||K,at=at||$,Et=Et||ct,(K!==y||st!==E)&&(n.blendEquationSeparate(oe[K],oe[st]),y=K,E=st),($!==M||ct!==b||at!==A||Et!==x)&&(n.blendFuncSeparate(Yt[$],Yt[ct],Yt[at],Yt[Et]),M=$,b=ct,A=at,x=Et),(Wt.equals(T)===!1||it!==D)&&(n.blendColor(Wt.r,Wt.g,Wt.b,it),T.copy(Wt),D=it),m=L,R=!1}function ke(L,K){L.side===un?Ot(n.CULL_FACE):mt(n.CULL_FACE);let $=L.side===vn;K&&($=!$),yn($),L.blending===Gr&&L.transparent===!1?en(Fs):en(L.blending,L.blendEquation,L.blendSrc,L.blendDst,L.blendEquationAlpha,L.blendSrcAlpha,L.blendDstAlpha,L.blendColor,L.blendAlpha,L.premultipliedAlpha),o.setFunc(L.depthFunc),o.setTest(L.depthTest),o.setMask(L.depthWrite),r.setMask(L.colorWrite);let ct=L.stencilWrite;a.setTest(ct),ct&&(a.setMask(L.stencilWriteMask),a.setFunc(L.stencilFunc,L.stencilRef,L.stencilFuncMask),a.setOp(L.stencilFail,L.stencilZFail,L.stencilZPass)),Ye(L.polygonOffset,L.polygonOffsetFactor,L.polygonOffsetUnits),L.alphaToCoverage===!0?mt(n.SAMPLE_ALPHA_TO_COVERAGE):Ot(n.SAMPLE_ALPHA_TO_COVERAGE)}function yn(L){P!==L&&(L?n.frontFace(n.CW):n.frontFace(n.CCW),P=L)}function Ae(L){L!==eg?(mt(n.CULL_FACE),L!==F&&(L===yf?n.cullFace(n.BACK):L===ng?n.cullFace(n.FRONT):n.cullFace(n.FRONT_AND_BACK))):Ot(n.CULL_FACE),F=L}function ri(L){L!==B&&(k&&n.lineWidth(L),B=L)}function Ye(L,K,$){L?(mt(n.POLYGON_OFFSET_FILL),(I!==K||W!==$)&&(I=K,W=$,o.getReversed()&&(K=-K,$=-$),n.polygonOffset(K,$))):Ot(n.POLYGON_OFFSET_FILL)}function Un(L){L?mt(n.SCISSOR_TEST):Ot(n.SCISSOR_TEST)}function Fn(L){L===void 0&&(L=n.TEXTURE0+X-1),tt!==L&&(n.activeTexture(L),tt=L)}function On(L,K,$){$===void 0&&(tt===null?$=n.TEXTURE0+X-1:$=tt);let ct=et[$];ct===void 0&&(ct={type:void 0,texture:void 0},et[$]=ct),(ct.type!==L||ct.texture!==K)&&(tt!==$&&(n.activeTexture($),tt=$),n.bindTexture(L,K||Ct[L]),ct.type=L,ct.texture=K)}function O(){let L=et[tt];L!==void 0&&L.type!==void 0&&(n.bindTexture(L.type,null),L.type=void 0,L.texture=void 0)}function kn(){try{n.compressedTexImage2D(...arguments)}catch(L){Ft("WebGLState:",L)}}function ye(){try{n.compressedTexImage3D(...arguments)}catch(L){Ft("WebGLState:",L)}}function xe(){try{n.texSubImage2D(...arguments)}catch(L){Ft("WebGLState:",L)}}function pt(){try{n.texSubImage3D(...arguments)}catch(L){Ft("WebGLState:",L)}}function Be(){try{n.compressedTexSubImage2D(...arguments)}catch(L){Ft("WebGLState:",L)}}function Nt(){try{n.compressedTexSubImage3D(...arguments)}catch(L){Ft("WebGLState:",L)}}function Bt(){try{n.texStorage2D(...arguments)}catch(L){Ft("WebGLState:",L)}}function C(){try{n.texStorage3D(...arguments)}catch(L){Ft("WebGLState:",L)}}function S(){try{n.texImage2D(...arguments)}catch(L){Ft("WebGLState:",L)}}function V(){try{n.texImage3D(...arguments)}catch(L){Ft("WebGLState:",L)}}function nt(L){return h[L]!==void 0?h[L]:n.getParameter(L)}function j(L,K){h[L]!==K&&(n.pixelStorei(L,K),h[L]=K)}function ot(L){Z.equals(L)===!1&&(n.scissor(L.x,L.y,L.z,L.w),Z.copy(L))}function ht(L){dt.equals(L)===!1&&(n.viewport(L.x,L.y,L.z,L.w),dt.copy(L))}function Y(L,K){let $=c.get(K);$===void 0&&($=new WeakMap,c.set(K,$));let ct=$.get(L);ct===void 0&&(ct=n.getUniformBlockIndex(K,L.name),n.uniformBlockBinding(K,ct,ct),$.set(L,ct))}function J(L,K,$){let st=c.get(K).get(L);l[st]!==$&&(n.bindBufferBase(n.UNIFORM_BUFFER,st,$),l[st]=$)}function lt(){n.disable(n.BLEND),n.disable(n.CULL_FACE),n.disable(n.DEPTH_TEST),n.disable(n.POLYGON_OFFSET_FILL),n.disable(n.SCISSOR_TEST),n.disable(n.STENCIL_TEST),n.disable(n.SAMPLE_ALPHA_TO_COVERAGE),n.blendEquation(n.FUNC_ADD),n.blendFunc(n.ONE,n.ZERO),n.blendFuncSeparate(n.ONE,n.ZERO,n.ONE,n.ZERO),n.blendColor(0,0,0,0),n.colorMask(!0,!0,!0,!0),n.clearColor(0,0,0,0),n.depthMask(!0),n.depthFunc(n.LESS),o.setReversed(!1),n.clearDepth(1),n.stencilMask(4294967295),n.stencilFunc(n.ALWAYS,0,4294967295),n.stencilOp(n.KEEP,n.KEEP,n.KEEP),n.clearStencil(0),n.cullFace(n.BACK),n.frontFace(n.CCW),n.polygonOffset(0,0),n.activeTexture(n.TEXTURE0),n.bindFramebuffer(n.FRAMEBUFFER,null),n.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),n.bindFramebuffer(n.READ_FRAMEBUFFER,null),n.useProgram(null),n.lineWidth(1),n.scissor(0,0,n.canvas.width,n.canvas.height),n.viewport(0,0,n.canvas.width,n.canvas.height),n.pixelStorei(n.PACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_ALIGNMENT,4),n.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,!1),n.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,!1),n.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,n.BROWSER_DEFAULT_WEBGL),n.pixelStorei(n.PACK_ROW_LENGTH,0),n.pixelStorei(n.PACK_SKIP_PIXELS,0),n.pixelStorei(n.PACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_ROW_LENGTH,0),n.pixelStorei(n.UNPACK_IMAGE_HEIGHT,0),n.pixelStorei(n.UNPACK_SKIP_PIXELS,0),n.pixelStorei(n.UNPACK_SKIP_ROWS,0),n.pixelStorei(n.UNPACK_SKIP_IMAGES,0),u={},h={},tt=null,et={},d={},l={},f=new WeakMap,g=[],v=null,_=!1,m=null,y=null,M=null,b=null,E=null,A=null,x=null,T=new Vt(0,0,0),D=0,R=!1,P=null,F=null,B=null,I=null,W=null,Z.set(0,0,n.canvas.width,n.canvas.height),dt.set(0,0,n.canvas.width,n.canvas.height),r.reset(),o.reset(),a.reset()}return{buffers:{color:r,depth:o,stencil:a},enable:mt,disable:Ot,bindFramebuffer:Pe,drawBuffers:Dt,useProgram:ne,setBlending:en,setMaterial:ke,setFlipSided:yn,setCullFace:Ae,setLineWidth:ri,setPolygonOffset:Ye,setScissorTest:Un,activeTexture:Fn,bindTexture:On,unbindTexture:O,compressedTexImage2D:kn,compressedTexImage3D:ye,texImage2D:S,texImage3D:V,pixelStorei:j,getParameter:nt,updateUBOMapping:Y,uniformBlockBinding:J,texStorage2D:Bt,texStorage3D:C,texSubImage2D:xe,texSubImage3D:pt,compressedTexSubImage2D:Be,compressedTexSubImage3D:Nt,scissor:ot,viewport:ht,reset:lt}}function u1(n,t,e,i,s,r,o){let a=t.has("WEBGL_multisampled_render_to_texture")?t.get("WEBGL_multisampled_render_to_texture"):null,l=typeof navigator>"u"?!1:/OculusBrowser/g.test(navigator.userAgent),c=new rt,u=new WeakMap,h=new Set,d,f=new WeakMap,g=new Set,v=new FinalizationRegistry(C=>g.delete(C)),_=!1;try{_=typeof OffscreenCanvas<"u"&&new OffscreenCanvas(1,1).getContext("2d")!==null}catch{}function m(C,S){return _?new OffscreenCanvas(C,S):zo("canvas")}function y(C,S,V){let nt=1,j=Bt(C);if((j.width>V||j.height>V)&&(nt=V/Math.max(j.width,j.height)),nt<1)if(typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement||typeof HTMLCanvasElement<"u"&&C instanceof HTMLCanvasElement||typeof ImageBitmap<"u"&&C instanceof ImageBitmap||typeof VideoFrame<"u"&&C instanceof VideoFrame){let ot=Math.floor(nt*j.width),ht=Math.floor(nt*j.height);d===void 0&&(d=m(ot,ht));let Y=S?m(ot,ht):d;return Y.width=ot,Y.height=ht,Y.getContext("2d").drawImage(C,0,0,ot,ht),It("WebGLRenderer: Texture has been resized from ("+j.width+"x"+j.height+") to ("+ot+"x"+ht+")."),Y}else return"data"in C&&It("WebGLRenderer: Image in DataTexture is too big ("+j.width+"x"+j.height+")."),C;return C}function M(C){return C.generateMipmaps}function b(C){n.generateMipmap(C)}function E(C){return C.isWebGLCubeRenderTarget?n.TEXTURE_CUBE_MAP:C.isWebGL3DRenderTarget?n.TEXTURE_3D:C.isWebGLArrayRenderTarget||C.isCompressedArrayTexture?n.TEXTURE_2D_ARRAY:n.TEXTURE_2D}function A(C,S,V,nt,j,ot=!1){if(C!==null){if(n[C]!==void 0)return n[C];It("WebGLRenderer: Attempt to use non-existing WebGL internal format '"+C+"'")}let ht;nt&&(ht=t.get("EXT_texture_norm16"),ht||It("WebGLRenderer: Unable to use normalized textures without EXT_texture_norm16 extension"));let Y=S;if(S===n.RED&&(V===n.FLOAT&&(Y=n.R32F),V===n.HALF_FLOAT&&(Y=n.R16F),V===n.UNSIGNED_BYTE&&(Y=n.R8),V===n.UNSIGNED_SHORT&&ht&&(Y=ht.R16_EXT),V===n.SHORT&&ht&&(Y=ht.R16_SNORM_EXT)),S===n.RED_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.R8UI),V===n.UNSIGNED_SHORT&&(Y=n.R16UI),V===n.UNSIGNED_INT&&(Y=n.R32UI),V===n.BYTE&&(Y=n.R8I),V===n.SHORT&&(Y=n.R16I),V===n.INT&&(Y=n.R32I)),S===n.RG&&(V===n.FLOAT&&(Y=n.RG32F),V===n.HALF_FLOAT&&(Y=n.RG16F),V===n.UNSIGNED_BYTE&&(Y=n.RG8),V===n.UNSIGNED_SHORT&&ht&&(Y=ht.RG16_EXT),V===n.SHORT&&ht&&(Y=ht.RG16_SNORM_EXT)),S===n.RG_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RG8UI),V===n.UNSIGNED_SHORT&&(Y=n.RG16UI),V===n.UNSIGNED_INT&&(Y=n.RG32UI),V===n.BYTE&&(Y=n.RG8I),V===n.SHORT&&(Y=n.RG16I),V===n.INT&&(Y=n.RG32I)),S===n.RGB_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RGB8UI),V===n.UNSIGNED_SHORT&&(Y=n.RGB16UI),V===n.UNSIGNED_INT&&(Y=n.RGB32UI),V===n.BYTE&&(Y=n.RGB8I),V===n.SHORT&&(Y=n.RGB16I),V===n.INT&&(Y=n.RGB32I)),S===n.RGBA_INTEGER&&(V===n.UNSIGNED_BYTE&&(Y=n.RGBA8UI),V===n.UNSIGNED_SHORT&&(Y=n.RGBA16UI),V===n.UNSIGNED_INT&&(Y=n.RGBA32UI),V===n.BYTE&&(Y=n.RGBA8I),V===n.SHORT&&(Y=n.RGBA16I),V===n.INT&&(Y=n.RGBA32I)),S===n.RGB&&(V===n.UNSIGNED_SHORT&&ht&&(Y=ht.RGB16_EXT),V===n.SHORT&&ht&&(Y=ht.RGB16_SNORM_EXT),V===n.UNSIGNED_INT_5_9_9_9_REV&&(Y=n.RGB9_E5),V===n.UNSIGNED_INT_10F_11F_11F_REV&&(Y=n.R11F_G11F_B10F)),S===n.RGBA){let J=ot?Bo:Kt.getTransfer(j);V===n.FLOAT&&(Y=n.RGBA32F),V===n.HALF_FLOAT&&(Y=n.RGBA16F),V===n.UNSIGNED_BYTE&&(Y=J===ce?n.SRGB8_ALPHA8:n.RGBA8),V===n.UNSIGNED_SHORT&&ht&&(Y=ht.RGBA16_EXT),V===n.SHORT&&ht&&(Y=ht.RGBA16_SNORM_EXT),V===n.UNSIGNED_SHORT_4_4_4_4&&(Y=n.RGBA4),V===n.UNSIGNED_SHORT_5_5_5_1&&(Y=n.RGB5_A1)}return(Y===n.R16F||Y===n.R32F||Y===n.RG16F||Y===n.RG32F||Y===n.RGBA16F||Y===n.RGBA32F)&&t.get("EXT_color_buffer_float"),Y}function x(C,S){let V;return C?S===null||S===ni||S===Bs?V=n.DEPTH24_STENCIL8:S===Xn?V=n.DEPTH32F_STENCIL8:S===Wr&&(V=n.DEPTH24_STENCIL8,It("DepthTexture: 16 bit depth attachment is not supported with stencil. Using 24-bit attachment.")):S===null||S===ni||S===Bs?V=n.DEPTH_COMPONENT24:S===Xn?V=n.DEPTH_COMPONENT32F:S===Wr&&(V=n.DEPTH_COMPONENT16),V}function T(C,S){return M(C)===!0||C.isFramebufferTexture&&C.minFilter!==je&&C.minFilter!==_n?Math.log2(Math.max(S.width,S.height))+1:C.mipmaps.length>0?C.mipmaps.length:C.isCompressedTexture&&Array.isArray(C.image)?S.mipmaps.length:1}function D(C){let S=new WeakRef(C);i.get(C).__ref=S,g.add(S),v.register(C,S,S)}function R(C){let S=i.get(C).__ref;S!==void 0&&(g.delete(S),v.unregister(S))}function P(C){B(C.target)}function F(C){I(C.target)}function B(C){C.removeEventListener("dispose",P),R(C),X(C),C.isVideoTexture&&u.delete(C),C.isHTMLTexture&&h.delete(C)}function I(C){C.removeEventListener("dispose",F),R(C),Q(C)}function W(){for(let C of g){let S=C.deref();S!==void 0&&(S.isRenderTarget===!0?I(S):B(S))}g.clear(),h.clear()}function X(C){let S=i.get(C);if(S.__webglInit===void 0)return;let V=C.source,nt=f.get(V);if(nt){let j=nt[S.__cacheKey];j.usedTimes--,j.usedTimes===0&&k(C),Object.keys(nt).length===0&&f.delete(V)}i.remove(C)}function k(C){let S=i.get(C);n.deleteTexture(S.__webglTexture);let V=C.source,nt=f.get(V);delete nt[S.__cacheKey],o.memory.textures--}function Q(C){let S=i.get(C);S.__depthDisposeCallback&&S.__depthDisposeCallback();let V=C.depthTexture;if(V&&V.renderTarget===C&&B(V),C.isWebGLCubeRenderTarget)for(let j=0;j<6;j++){if(Array.isArray(S.__webglFramebuffer[j]))for(let ot=0;ot<S.__webglFramebuffer[j].length;ot++)n.deleteFramebuffer(S.__webglFramebuffer[j][ot]);else n.deleteFramebuffer(S.__webglFramebuffer[j]);S.__webglDepthbuffer&&n.deleteRenderbuffer(S.__webglDepthbuffer[j])}else{if(Array.isArray(S.__webglFramebuffer))for(let j=0;j<S.__webglFramebuffer.length;j++)n.deleteFramebuffer(S.__webglFramebuffer[j]);else n.deleteFramebuffer(S.__webglFramebuffer);if(S.__webglDepthbuffer&&n.deleteRenderbuffer(S.__webglDepthbuffer),S.__webglMultisampledFramebuffer&&n.deleteFramebuffer(S.__webglMultisampledFramebuffer),S.__webglColorRenderbuffer)for(let j=0;j<S.__webglColorRenderbuffer.length;j++)S.__webglColorRenderbuffer[j]&&n.deleteRenderbuffer(S.__webglColorRenderbuffer[j]);S.__webglDepthRenderbuffer&&n.deleteRenderbuffer(S.__webglDepthRenderbuffer)}let nt=C.textures;for(let j=0,ot=nt.length;j<ot;j++){let ht=i.get(nt[j]);ht.__webglTexture&&(n.deleteTexture(ht.__webglTexture),o.memory.textures--),i.remove(nt[j])}i.remove(C)}let G=0;function tt(){G=0}function et(){return G}function bt(C){G=C}function Lt(){let C=G;return C>=s.maxTextures&&It("WebGLTextures: Trying to use "+(C+1)+" texture units while this GPU supports only "+s.maxTextures),G+=1,C}function Z(C){let S=[];return S.push(C.wrapS),S.push(C.wrapT),S.push(C.wrapR||0),S.push(C.magFilter),S.push(C.minFilter),S.push(C.anisotropy),S.push(C.internalFormat),S.push(C.format),S.push(C.type),S.push(C.generateMipmaps),S.push(C.mipmapsAutoUpdate),S.push(C.premultiplyAlpha),S.push(C.flipY),S.push(C.unpackAlignment),S.push(C.colorSpace),S.join()}function dt(C,S){let V=i.get(C);if(C.isVideoTexture&&Be(C),C.isRenderTargetTexture===!1&&C.isExternalTexture!==!0&&C.version>0&&V.__version!==C.version){let nt=C.image;if(nt===null)It("WebGLRenderer: Texture marked for update but no image data found.");else if(nt.complete===!1)It("WebGLRenderer: Texture marked for update but image is incomplete");else{ke(V,C,S);return}}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D,V.__webglTexture,n.TEXTURE0+S)}function xt(C,S){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){ke(V,C,S);return}else C.isExternalTexture&&(V.__webglTexture=C.sourceTexture?C.sourceTexture:null);e.bindTexture(n.TEXTURE_2D_ARRAY,V.__webglTexture,n.TEXTURE0+S)}function Ct(C,S){let V=i.get(C);if(C.isRenderTargetTexture===!1&&C.version>0&&V.__version!==C.version){ke(V,C,S);return}e.bindTexture(n.TEXTURE_3D,V.__webglTexture,n.TEXTURE0+S)}function mt(C,S){let V=i.get(C);if(C.version>0&&V.__version!==C.version){yn(V,C,S);return}e.bindTexture(n.TEXTURE_CUBE_MAP,V.__webglTexture,n.TEXTURE0+S)}let Ot={[nc]:n.REPEAT,[li]:n.CLAMP_TO_EDGE,[ic]:n.MIRRORED_REPEAT},Pe={[je]:n.NEAREST,[wg]:n.NEAREST_MIPMAP_NEAREST,[_a]:n.NEAREST_MIPMAP_LINEAR,[_n]:n.LINEAR,[Fc]:n.LINEAR_MIPMAP_NEAREST,[Oi]:n.LINEAR_MIPMAP_LINEAR},Dt={[Cg]:n.NEVER,[zf]:n.ALWAYS,[Rg]:n.LESS,[kf]:n.LEQUAL,[Pg]:n.EQUAL,[Bf]:n.GEQUAL,[Ig]:n.GREATER,[Dg]:n.NOTEQUAL};function ne(C,S){if(S.type===Xn&&t.has("OES_texture_float_linear")===!1&&(S.magFilter===_n||S.magFilter===Fc||S.magFilter===_a||S.magFilter===Oi||S.minFilter===_n||S.minFilter===Fc||S.minFilter===_a||S.minFilter===Oi)&&It("WebGLRenderer: Unable to use linear filtering with floating point textures. OES_texture_float_linear not supported on this device."),n.texParameteri(C,n.TEXTURE_WRAP_S,Ot[S.wrapS]),n.texParameteri(C,n.TEXTURE_WRAP_T,Ot[S.wrapT]),(C===n.TEXTURE_3D||C===n.TEXTURE_2D_ARRAY)&&n.texParameteri(C,n.TEXTURE_WRAP_R,Ot[S.wrapR]),n.texParameteri(C,n.TEXTURE_MAG_FILTER,Pe[S.magFilter]),n.texParameteri(C,n.TEXTURE_MIN_FILTER,Pe[S.minFilter]),S.compareFunction&&(n.texParameteri(C,n.TEXTURE_COMPARE_MODE,n.COMPARE_REF_TO_TEXTURE),n.texParameteri(C,n.TEXTURE_COMPARE_FUNC,Dt[S.compareFunction])),t.has("EXT_texture_filter_anisotropic")===!0){if(S.magFilter===je||S.minFilter!==_a&&S.minFilter!==Oi||S.type===Xn&&t.has("OES_texture_float_linear")===!1)return;if(S.anisotropy>1||i.get(S).__currentAnisotropy){let V=t.get("EXT_texture_filter_anisotropic");n.texParameterf(C,V.TEXTURE_MAX_ANISOTROPY_EXT,Math.min(S.anisotropy,s.getMaxAnisotropy())),i.get(S).__currentAnisotropy=S.anisotropy}}}function oe(C,S){let V=!1;C.__webglInit===void 0&&(C.__webglInit=!0,S.addEventListener("dispose",P),D(S));let nt=S.source,j=f.get(nt);j===void 0&&(j={},f.set(nt,j));let ot=Z(S);if(ot!==C.__cacheKey){j[ot]===void 0&&(j[ot]={texture:n.createTexture(),usedTimes:0},o.memory.textures++,V=!0),j[ot].usedTimes++;let ht=j[C.__cacheKey];ht!==void 0&&(j[C.__cacheKey].usedTimes--,ht.usedTimes===0&&k(S)),C.__cacheKey=ot,C.__webglTexture=j[ot].texture}return V}function Yt(C,S,V){return Math.floor(Math.floor(C/V)/S)}function en(C,S,V,nt){let ot=C.updateRanges;if(ot.length===0)e.texSubImage2D(n.TEXTURE_2D,0,0,0,S.width,S.height,V,nt,S.data);else{ot.sort((L,K)=>L.start-K.start);let ht=0;for(let L=1;L<ot.length;L++){let K=ot[ht],$=ot[L],ct=K.start+K.count,st=Yt($.start,S.width,4),at=Yt(K.start,S.width,4);$.start<=ct+1&&st===at&&Yt($.start+$.count-1,S.width,4)===st?K.count=Math.max(K.count,$.start+$.count-K.start):(++ht,ot[ht]=$)}ot.length=ht+1;let Y=e.getParameter(n.UNPACK_ROW_LENGTH),J=e.getParameter(n.UNPACK_SKIP_PIXELS),lt=e.getParameter(n.UNPACK_SKIP_ROWS);e.pixelStorei(n.UNPACK_ROW_LENGTH,S.width);for(let L=0,K=ot.length;L<K;L++){let $=ot[L],ct=Math.floor($.start/4),st=Math.ceil($.count/4),at=ct%S.width,Et=Math.floor(ct/S.width),Wt=st,it=1;e.pixelStorei(n.UNPACK_SKIP_PIXELS,at),e.pixelStorei(n.UNPACK_SKIP_ROWS,Et),e.texSubImage2D(n.TEXTURE_2D,0,at,Et,Wt,it,V,nt,S.data)}C.clearUpdateRanges(),e.pixelStorei(n.UNPACK_ROW_LENGTH,Y),e.pixelStorei(n.UNPACK_SKIP_PIXELS,J),e.pixelStorei(n.UNPACK_SKIP_ROWS,lt)}}function ke(C,S,V){let nt=n.TEXTURE_2D;(S.isDataArrayTexture||S.isCompressedArrayTexture)&&(nt=n.TEXTURE_2D_ARRAY),S.isData3DTexture&&(nt=n.TEXTURE_3D);let j=oe(C,S),ot=S.source;e.bindTexture(nt,C.__webglTexture,n.TEXTURE0+V);let ht=i.get(ot);if(ot.version!==ht.__version||j===!0){if(e.activeTexture(n.TEXTURE0+V),(typeof ImageBitmap<"u"&&S.image instanceof ImageBitmap)===!1){let it=Kt.getPrimaries(Kt.workingColorSpace),Rt=S.colorSpace===Bi?null:Kt.getPrimaries(S.colorSpace),Gt=S.colorSpace===Bi||it===Rt?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,Gt)}e.pixelStorei(n.UNPACK_ALIGNMENT,S.unpackAlignment);let J=y(S.image,!1,s.maxTextureSize);J=Nt(S,J);let lt=r.convert(S.format,S.colorSpace),L=r.convert(S.type),K=A(S.internalFormat,lt,L,S.normalized,S.colorSpace,S.isVideoTexture);ne(nt,S);let $,ct=S.mipmaps,st=S.isVideoTexture!==!0,at=ht.__version===void 0||j===!0,Et=ot.dataReady,Wt=T(S,J);if(S.isDepthTexture)K=x(S.format===ki,S.type),at&&(st?e.texStorage2D(n.TEXTURE_2D,1,K,J.width,J.height):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,lt,L,null));else if(S.isDataTexture)if(ct.length>0){st&&at&&e.texStorage2D(n.TEXTURE_2D,Wt,K,ct[0].width,ct[0].height);for(let it=0,Rt=ct.length;it<Rt;it++)$=ct[it],st?Et&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,L,$.data):e.texImage2D(n.TEXTURE_2D,it,K,$.width,$.height,0,lt,L,$.data);S.generateMipmaps=!1}else st?(at&&e.texStorage2D(n.TEXTURE_2D,Wt,K,J.width,J.height),Et&&en(S,J,lt,L)):e.texImage2D(n.TEXTURE_2D,0,K,J.width,J.height,0,lt,L,J.data);else if(S.isCompressedTexture)if(S.isCompressedArrayTexture){st&&at&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Wt,K,ct[0].width,ct[0].height,J.depth);for(let it=0,Rt=ct.length;it<Rt;it++)if($=ct[it],S.format!==si)if(lt!==null)if(st){if(Et)if(S.layerUpdates.size>0){let Gt=Jf($.width,$.height,S.format,S.type);for(let gt of S.layerUpdates){let ue=$.data.subarray(gt*Gt/$.data.BYTES_PER_ELEMENT,(gt+1)*Gt/$.data.BYTES_PER_ELEMENT);e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,gt,$.width,$.height,1,lt,ue)}}else e.compressedTexSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,$.width,$.height,J.depth,lt,$.data)}else e.compressedTexImage3D(n.TEXTURE_2D_ARRAY,it,K,$.width,$.height,J.depth,0,$.data,0,0);else It("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()");else st?Et&&e.texSubImage3D(n.TEXTURE_2D_ARRAY,it,0,0,0,$.width,$.height,J.depth,lt,L,$.data):e.texImage3D(n.TEXTURE_2D_ARRAY,it,K,$.width,$.height,J.depth,0,lt,L,$.data);S.layerUpdates.size>0&&S.clearLayerUpdates()}else{st&&at&&e.texStorage2D(n.TEXTURE_2D,Wt,K,ct[0].width,ct[0].height);for(let it=0,Rt=ct.length;it<Rt;it++)$=ct[it],S.format!==si?lt!==null?st?Et&&e.compressedTexSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,$.data):e.compressedTexImage2D(n.TEXTURE_2D,it,K,$.width,$.height,0,$.data):It("WebGLRenderer: Attempt to load unsupported compressed texture format in .uploadTexture()"):st?Et&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,$.width,$.height,lt,L,$.data):e.texImage2D(n.TEXTURE_2D,it,K,$.width,$.height,0,lt,L,$.data)}else if(S.isDataArrayTexture)if(st){if(at&&e.texStorage3D(n.TEXTURE_2D_ARRAY,Wt,K,J.width,J.height,J.depth),Et)if(S.layerUpdates.size>0){let it=Jf(J.width,J.height,S.format,S.type);for(let Rt of S.layerUpdates){let Gt=J.data.subarray(Rt*it/J.data.BYTES_PER_ELEMENT,(Rt+1)*it/J.data.BYTES_PER_ELEMENT);e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,Rt,J.width,J.height,1,lt,L,Gt)}S.clearLayerUpdates()}else e.texSubImage3D(n.TEXTURE_2D_ARRAY,0,0,0,0,J.width,J.height,J.depth,lt,L,J.data)}else e.texImage3D(n.TEXTURE_2D_ARRAY,0,K,J.width,J.height,J.depth,0,lt,L,J.data);else if(S.isData3DTexture)st?(at&&e.texStorage3D(n.TEXTURE_3D,Wt,K,J.width,J.height,J.depth),Et&&e.texSubImage3D(n.TEXTURE_3D,0,0,0,0,J.width,J.height,J.depth,lt,L,J.data)):e.texImage3D(n.TEXTURE_3D,0,K,J.width,J.height,J.depth,0,lt,L,J.data);else if(S.isFramebufferTexture){if(at)if(st)e.texStorage2D(n.TEXTURE_2D,Wt,K,J.width,J.height);else{let it=J.width,Rt=J.height;for(let Gt=0;Gt<Wt;Gt++)e.texImage2D(n.TEXTURE_2D,Gt,K,it,Rt,0,lt,L,null),it>>=1,Rt>>=1}}else if(S.isHTMLTexture){if("texElementImage2D"in n){let it=n.canvas;if(it.hasAttribute("layoutsubtree")||it.setAttribute("layoutsubtree","true"),J.parentNode!==it){it.appendChild(J),h.add(S),it.onpaint=Rt=>{let Gt=Rt.changedElements;for(let gt of h)Gt.includes(gt.image)&&(gt.needsUpdate=!0)},it.requestPaint();return}if(n.texElementImage2D.length===3)n.texElementImage2D(n.TEXTURE_2D,n.RGBA8,J);else{let Gt=n.RGBA,gt=n.RGBA,ue=n.UNSIGNED_BYTE;n.texElementImage2D(n.TEXTURE_2D,0,Gt,gt,ue,J)}n.texParameteri(n.TEXTURE_2D,n.TEXTURE_MIN_FILTER,n.LINEAR),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_S,n.CLAMP_TO_EDGE),n.texParameteri(n.TEXTURE_2D,n.TEXTURE_WRAP_T,n.CLAMP_TO_EDGE)}}else if(ct.length>0){if(st&&at){let it=Bt(ct[0]);e.texStorage2D(n.TEXTURE_2D,Wt,K,it.width,it.height)}for(let it=0,Rt=ct.length;it<Rt;it++)$=ct[it],st?Et&&e.texSubImage2D(n.TEXTURE_2D,it,0,0,lt,L,$):e.texImage2D(n.TEXTURE_2D,it,K,lt,L,$);S.generateMipmaps=!1}else if(st){if(at){let it=Bt(J);e.texStorage2D(n.TEXTURE_2D,Wt,K,it.width,it.height)}Et&&e.texSubImage2D(n.TEXTURE_2D,0,0,0,lt,L,J)}else e.texImage2D(n.TEXTURE_2D,0,K,lt,L,J);M(S)&&S.mipmapsAutoUpdate===!0&&b(nt),ht.__version=ot.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function yn(C,S,V){if(S.image.length!==6)return;let nt=oe(C,S),j=S.source;e.bindTexture(n.TEXTURE_CUBE_MAP,C.__webglTexture,n.TEXTURE0+V);let ot=i.get(j);if(j.version!==ot.__version||nt===!0){e.activeTexture(n.TEXTURE0+V);let ht=Kt.getPrimaries(Kt.workingColorSpace),Y=S.colorSpace===Bi?null:Kt.getPrimaries(S.colorSpace),J=S.colorSpace===Bi||ht===Y?n.NONE:n.BROWSER_DEFAULT_WEBGL;e.pixelStorei(n.UNPACK_FLIP_Y_WEBGL,S.flipY),e.pixelStorei(n.UNPACK_PREMULTIPLY_ALPHA_WEBGL,S.premultiplyAlpha),e.pixelStorei(n.UNPACK_ALIGNMENT,S.unpackAlignment),e.pixelStorei(n.UNPACK_COLORSPACE_CONVERSION_WEBGL,J);let lt=S.isCompressedTexture||S.image[0].isCompressedTexture,L=S.image[0]&&S.image[0].isDataTexture,K=[];for(let gt=0;gt<6;gt++)!lt&&!L?K[gt]=y(S.image[gt],!0,s.maxCubemapSize):K[gt]=L?S.image[gt].image:S.image[gt],K[gt]=Nt(S,K[gt]);let $=K[0],ct=r.convert(S.format,S.colorSpace),st=r.convert(S.type),at=A(S.internalFormat,ct,st,S.normalized,S.colorSpace),Et=S.isVideoTexture!==!0,Wt=ot.__version===void 0||nt===!0,it=j.dataReady,Rt=T(S,$);ne(n.TEXTURE_CUBE_MAP,S);let Gt;if(S.isDepthTexture){if(at=x(S.format===ki,S.type),Wt)if(Et)e.texStorage2D(n.TEXTURE_CUBE_MAP,1,at,$.width,$.height);else for(let gt=0;gt<6;gt++)e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,$.width,$.height,0,ct,st,null)}else if(lt){Et&&Wt&&e.texStorage2D(n.TEXTURE_CUBE_MAP,Rt,at,$.width,$.height);for(let gt=0;gt<6;gt++){Gt=K[gt].mipmaps;for(let ue=0;ue<Gt.length;ue++){let Ze=Gt[ue];S.format!==si?ct!==null?Et?it&&e.compressedTexSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue,0,0,Ze.width,Ze.height,ct,Ze.data):e.compressedTexImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue,at,Ze.width,Ze.height,0,Ze.data):It("WebGLRenderer: Attempt to load unsupported compressed texture format in .setTextureCube()"):Et?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue,0,0,Ze.width,Ze.height,ct,st,Ze.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue,at,Ze.width,Ze.height,0,ct,st,Ze.data)}}}else{if(Gt=S.mipmaps,Et&&Wt){Gt.length>0&&Rt++;let gt=Bt(K[0]);e.texStorage2D(n.TEXTURE_CUBE_MAP,Rt,at,gt.width,gt.height)}for(let gt=0;gt<6;gt++)if(L){Et?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,0,0,K[gt].width,K[gt].height,ct,st,K[gt].data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,K[gt].width,K[gt].height,0,ct,st,K[gt].data);for(let ue=0;ue<Gt.length;ue++){let Gi=Gt[ue].image[gt].image;Et?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue+1,0,0,Gi.width,Gi.height,ct,st,Gi.data):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue+1,at,Gi.width,Gi.height,0,ct,st,Gi.data)}}else{Et?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,0,0,ct,st,K[gt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,0,at,ct,st,K[gt]);for(let ue=0;ue<Gt.length;ue++){let Ze=Gt[ue];Et?it&&e.texSubImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue+1,0,0,ct,st,Ze.image[gt]):e.texImage2D(n.TEXTURE_CUBE_MAP_POSITIVE_X+gt,ue+1,at,ct,st,Ze.image[gt])}}}M(S)&&S.mipmapsAutoUpdate===!0&&b(n.TEXTURE_CUBE_MAP),ot.__version=j.version,S.onUpdate&&S.onUpdate(S)}C.__version=S.version}function Ae(C,S,V,nt,j,ot){let ht=r.convert(V.format,V.colorSpace),Y=r.convert(V.type),J=A(V.internalFormat,ht,Y,V.normalized,V.colorSpace),lt=i.get(S),L=i.get(V);if(L.__renderTarget=S,!lt.__hasExternalTextures){let K=Math.max(1,S.width>>ot),$=Math.max(1,S.height>>ot);j===n.TEXTURE_3D||j===n.TEXTURE_2D_ARRAY?e.texImage3D(j,ot,J,K,$,S.depth,0,ht,Y,null):e.texImage2D(j,ot,J,K,$,0,ht,Y,null)}e.bindFramebuffer(n.FRAMEBUFFER,C),pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,nt,j,L.__webglTexture,0,xe(S)):(j===n.TEXTURE_2D||j>=n.TEXTURE_CUBE_MAP_POSITIVE_X&&j<=n.TEXTURE_CUBE_MAP_NEGATIVE_Z)&&n.framebufferTexture2D(n.FRAMEBUFFER,nt,j,L.__webglTexture,ot),e.bindFramebuffer(n.FRAMEBUFFER,null)}function ri(C,S,V){if(n.bindRenderbuffer(n.RENDERBUFFER,C),S.depthBuffer){let nt=S.depthTexture,j=nt&&nt.isDepthTexture?nt.type:null,ot=x(S.stencilBuffer,j),ht=S.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;pt(S)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,xe(S),ot,S.width,S.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,xe(S),ot,S.width,S.height):n.renderbufferStorage(n.RENDERBUFFER,ot,S.width,S.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,ht,n.RENDERBUFFER,C)}else{let nt=S.textures;for(let j=0;j<nt.length;j++){let ot=nt[j],ht=r.convert(ot.format,ot.colorSpace),Y=r.convert(ot.type),J=A(ot.internalFormat,ht,Y,ot.normalized,ot.colorSpace);pt(S)?a.renderbufferStorageMultisampleEXT(n.RENDERBUFFER,xe(S),J,S.width,S.height):V?n.renderbufferStorageMultisample(n.RENDERBUFFER,xe(S),J,S.width,S.height):n.renderbufferStorage(n.RENDERBUFFER,J,S.width,S.height)}}n.bindRenderbuffer(n.RENDERBUFFER,null)}function Ye(C,S,V){let nt=S.isWebGLCubeRenderTarget===!0;if(e.bindFramebuffer(n.FRAMEBUFFER,C),!(S.depthTexture&&S.depthTexture.isDepthTexture))throw new Error("THREE.WebGLTextures: renderTarget.depthTexture must be an instance of THREE.DepthTexture.");let j=i.get(S.depthTexture);j.__renderTarget=S;let ot=nt?S.depthTexture.image[0]:S.depthTexture.image;(!j.__webglTexture||ot.width!==S.width||ot.height!==S.height)&&(ot.width=S.width,ot.height=S.height,S.depthTexture.needsUpdate=!0),nt?mt(S.depthTexture,0):dt(S.depthTexture,0);let ht=j.__webglTexture,Y=xe(S),J=nt?n.TEXTURE_CUBE_MAP_POSITIVE_X+V:n.TEXTURE_2D,lt=S.depthTexture.format===ki?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;if(S.depthTexture.format===Li)pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,J,ht,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,lt,J,ht,0);else if(S.depthTexture.format===ki)pt(S)?a.framebufferTexture2DMultisampleEXT(n.FRAMEBUFFER,lt,J,ht,0,Y):n.framebufferTexture2D(n.FRAMEBUFFER,lt,J,ht,0);else throw new Error("THREE.WebGLTextures: Unknown depthTexture format.")}function Un(C){let S=i.get(C),V=C.isWebGLCubeRenderTarget===!0;if(S.__boundDepthTexture!==C.depthTexture){let nt=C.depthTexture;if(S.__depthDisposeCallback&&S.__depthDisposeCallback(),nt){let j=()=>{delete S.__boundDepthTexture,delete S.__depthDisposeCallback,nt.removeEventListener("dispose",j)};nt.addEventListener("dispose",j),S.__depthDisposeCallback=j}S.__boundDepthTexture=nt}if(C.depthTexture&&!S.__autoAllocateDepthBuffer)if(V)for(let nt=0;nt<6;nt++)Ye(S.__webglFramebuffer[nt],C,nt);else C.texture.mipmaps.length>0?Ye(S.__webglFramebuffer[0],C,0):Ye(S.__webglFramebuffer,C,0);else if(V){S.__webglDepthbuffer=[];for(let nt=0;nt<6;nt++)if(e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer[nt]),S.__webglDepthbuffer[nt]===void 0)S.__webglDepthbuffer[nt]=n.createRenderbuffer(),ri(S.__webglDepthbuffer[nt],C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ot=S.__webglDepthbuffer[nt];n.bindRenderbuffer(n.RENDERBUFFER,ot),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,ot)}}else if(C.texture.mipmaps.length>0?e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer[0]):e.bindFramebuffer(n.FRAMEBUFFER,S.__webglFramebuffer),S.__webglDepthbuffer===void 0)S.__webglDepthbuffer=n.createRenderbuffer(),ri(S.__webglDepthbuffer,C,!1);else{let j=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ot=S.__webglDepthbuffer;n.bindRenderbuffer(n.RENDERBUFFER,ot),n.framebufferRenderbuffer(n.FRAMEBUFFER,j,n.RENDERBUFFER,ot)}e.bindFramebuffer(n.FRAMEBUFFER,null)}function Fn(C,S,V){let nt=i.get(C);S!==void 0&&Ae(nt.__webglFramebuffer,C,C.texture,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,0),V!==void 0&&Un(C)}function On(C){let S=C.texture,V=i.get(C),nt=i.get(S);C.addEventListener("dispose",F),D(C);let j=C.textures,ot=C.isWebGLCubeRenderTarget===!0,ht=j.length>1;if(ht||(nt.__webglTexture===void 0&&(nt.__webglTexture=n.createTexture()),nt.__version=S.version,o.memory.textures++),ot){V.__webglFramebuffer=[];for(let Y=0;Y<6;Y++)if(S.mipmaps.length>0){V.__webglFramebuffer[Y]=[];for(let J=0;J<S.mipmaps.length;J++)V.__webglFramebuffer[Y][J]=n.createFramebuffer()}else V.__webglFramebuffer[Y]=n.createFramebuffer()}else{if(S.mipmaps.length>0){V.__webglFramebuffer=[];for(let Y=0;Y<S.mipmaps.length;Y++)V.__webglFramebuffer[Y]=n.createFramebuffer()}else V.__webglFramebuffer=n.createFramebuffer();if(ht)for(let Y=0,J=j.length;Y<J;Y++){let lt=i.get(j[Y]);lt.__webglTexture===void 0&&(lt.__webglTexture=n.createTexture(),o.memory.textures++)}if(C.samples>0&&pt(C)===!1){V.__webglMultisampledFramebuffer=n.createFramebuffer(),V.__webglColorRenderbuffer=[],e.bindFramebuffer(n.FRAMEBUFFER,V.__webglMultisampledFramebuffer);for(let Y=0;Y<j.length;Y++){let J=j[Y];V.__webglColorRenderbuffer[Y]=n.createRenderbuffer(),n.bindRenderbuffer(n.RENDERBUFFER,V.__webglColorRenderbuffer[Y]);let lt=r.convert(J.format,J.colorSpace),L=r.convert(J.type),K=A(J.internalFormat,lt,L,J.normalized,J.colorSpace,C.isXRRenderTarget===!0),$=xe(C);n.renderbufferStorageMultisample(n.RENDERBUFFER,$,K,C.width,C.height),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+Y,n.RENDERBUFFER,V.__webglColorRenderbuffer[Y])}n.bindRenderbuffer(n.RENDERBUFFER,null),C.depthBuffer&&(V.__webglDepthRenderbuffer=n.createRenderbuffer(),ri(V.__webglDepthRenderbuffer,C,!0)),e.bindFramebuffer(n.FRAMEBUFFER,null)}}if(ot){e.bindTexture(n.TEXTURE_CUBE_MAP,nt.__webglTexture),ne(n.TEXTURE_CUBE_MAP,S);for(let Y=0;Y<6;Y++)if(S.mipmaps.length>0)for(let J=0;J<S.mipmaps.length;J++)Ae(V.__webglFramebuffer[Y][J],C,S,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,J);else Ae(V.__webglFramebuffer[Y],C,S,n.COLOR_ATTACHMENT0,n.TEXTURE_CUBE_MAP_POSITIVE_X+Y,0);M(S)?b(n.TEXTURE_CUBE_MAP):S.mipmaps.length>0&&n.texParameteri(n.TEXTURE_CUBE_MAP,n.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}else if(ht){for(let Y=0,J=j.length;Y<J;Y++){let lt=j[Y],L=i.get(lt),K=n.TEXTURE_2D;(C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(K=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(K,L.__webglTexture),ne(K,lt),Ae(V.__webglFramebuffer,C,lt,n.COLOR_ATTACHMENT0+Y,K,0),M(lt)&&b(K)}e.unbindTexture()}else{let Y=n.TEXTURE_2D;if((C.isWebGL3DRenderTarget||C.isWebGLArrayRenderTarget)&&(Y=C.isWebGL3DRenderTarget?n.TEXTURE_3D:n.TEXTURE_2D_ARRAY),e.bindTexture(Y,nt.__webglTexture),ne(Y,S),S.mipmaps.length>0)for(let J=0;J<S.mipmaps.length;J++)Ae(V.__webglFramebuffer[J],C,S,n.COLOR_ATTACHMENT0,Y,J);else Ae(V.__webglFramebuffer,C,S,n.COLOR_ATTACHMENT0,Y,0);M(S)?b(Y):S.mipmaps.length>0&&n.texParameteri(Y,n.TEXTURE_MAX_LEVEL,S.mipmaps.length-1),e.unbindTexture()}C.depthBuffer&&Un(C)}function O(C){let S=C.textures;for(let V=0,nt=S.length;V<nt;V++){let j=S[V];if(M(j)&&j.mipmapsAutoUpdate===!0){let ot=E(C),ht=i.get(j).__webglTexture;e.bindTexture(ot,ht),b(ot),e.unbindTexture()}}}let kn=[];function ye(C){if(C.samples>0){if(pt(C)===!1){let S=C.textures,V=C.width,nt=C.height,j=n.COLOR_BUFFER_BIT,ot=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT,ht=i.get(C),Y=S.length>1;if(Y)for(let lt=0;lt<S.length;lt++)e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,null),e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,null,0);e.bindFramebuffer(n.READ_FRAMEBUFFER,ht.__webglMultisampledFramebuffer),C.texture.mipmaps.length>0?e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglFramebuffer[0]):e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglFramebuffer);for(let lt=0;lt<S.length;lt++){if(C.resolveDepthBuffer&&(C.depthBuffer&&(j|=n.DEPTH_BUFFER_BIT),C.stencilBuffer&&C.resolveStencilBuffer&&(j|=n.STENCIL_BUFFER_BIT)),Y){n.framebufferRenderbuffer(n.READ_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.RENDERBUFFER,ht.__webglColorRenderbuffer[lt]);let L=i.get(S[lt]).__webglTexture;n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0,n.TEXTURE_2D,L,0)}n.blitFramebuffer(0,0,V,nt,0,0,V,nt,j,n.NEAREST),l===!0&&(kn.length=0,kn.push(n.COLOR_ATTACHMENT0+lt),C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&kn.push(ot),n.invalidateFramebuffer(n.READ_FRAMEBUFFER,kn))}if(e.bindFramebuffer(n.READ_FRAMEBUFFER,null),e.bindFramebuffer(n.DRAW_FRAMEBUFFER,null),Y)for(let lt=0;lt<S.length;lt++){e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglMultisampledFramebuffer),n.framebufferRenderbuffer(n.FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.RENDERBUFFER,ht.__webglColorRenderbuffer[lt]);let L=i.get(S[lt]).__webglTexture;e.bindFramebuffer(n.FRAMEBUFFER,ht.__webglFramebuffer),n.framebufferTexture2D(n.DRAW_FRAMEBUFFER,n.COLOR_ATTACHMENT0+lt,n.TEXTURE_2D,L,0)}e.bindFramebuffer(n.DRAW_FRAMEBUFFER,ht.__webglMultisampledFramebuffer)}else if(C.depthBuffer&&C.storeMultisampledDepthBuffer===!1&&l){let S=C.stencilBuffer?n.DEPTH_STENCIL_ATTACHMENT:n.DEPTH_ATTACHMENT;n.invalidateFramebuffer(n.DRAW_FRAMEBUFFER,[S])}}}function xe(C){return Math.min(s.maxSamples,C.samples)}function pt(C){let S=i.get(C);return C.samples>0&&t.has("WEBGL_multisampled_render_to_texture")===!0&&S.__useRenderToTexture!==!1}function Be(C){let S=o.render.frame;u.get(C)!==S&&(u.set(C,S),C.update())}function Nt(C,S){let V=C.colorSpace,nt=C.format,j=C.type;return C.isCompressedTexture===!0||C.isVideoTexture===!0||V!==ko&&V!==Bi&&(Kt.getTransfer(V)===ce?(nt!==si||j!==Sn)&&It("WebGLTextures: sRGB encoded textures have to use RGBAFormat and UnsignedByteType."):Ft("WebGLTextures: Unsupported texture color space:",V)),S}function Bt(C){return typeof HTMLImageElement<"u"&&C instanceof HTMLImageElement?(c.width=C.naturalWidth||C.width,c.height=C.naturalHeight||C.height):typeof VideoFrame<"u"&&C instanceof VideoFrame?(c.width=C.displayWidth,c.height=C.displayHeight):(c.width=C.width,c.height=C.height),c}this.allocateTextureUnit=Lt,this.resetTextureUnits=tt,this.getTextureUnits=et,this.setTextureUnits=bt,this.setTexture2D=dt,this.setTexture2DArray=xt,this.setTexture3D=Ct,this.setTextureCube=mt,this.rebindTextures=Fn,this.setupRenderTarget=On,this.updateRenderTargetMipmap=O,this.updateMultisampleRenderTarget=ye,this.setupDepthRenderbuffer=Un,this.setupFrameBufferTexture=Ae,this.useMultisampledRTT=pt,this.dispose=W}function h1(n,t){function e(i,s=Bi){let r,o=Kt.getTransfer(s);if(i===Sn)return n.UNSIGNED_BYTE;if(i===kc)return n.UNSIGNED_SHORT_4_4_4_4;if(i===Bc)return n.UNSIGNED_SHORT_5_5_5_1;if(i===Nf)return n.UNSIGNED_INT_5_9_9_9_REV;if(i===Uf)return n.UNSIGNED_INT_10F_11F_11F_REV;if(i===Df)return n.BYTE;if(i===Lf)return n.SHORT;if(i===Wr)return n.UNSIGNED_SHORT;if(i===Oc)return n.INT;if(i===ni)return n.UNSIGNED_INT;if(i===Xn)return n.FLOAT;if(i===ii)return n.HALF_FLOAT;if(i===Ff)return n.ALPHA;if(i===Of)return n.RGB;if(i===si)return n.RGBA;if(i===Li)return n.DEPTH_COMPONENT;if(i===ki)return n.DEPTH_STENCIL;if(i===zc)return n.RED;if(i===Vc)return n.RED_INTEGER;if(i===fs)return n.RG;if(i===Gc)return n.RG_INTEGER;if(i===Hc)return n.RGBA_INTEGER;if(i===va||i===ya||i===xa||i===ba)if(o===ce)if(r=t.get("WEBGL_compressed_texture_s3tc_srgb"),r!==null){if(i===va)return r.COMPRESSED_SRGB_S3TC_DXT1_EXT;if(i===ya)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT1_EXT;if(i===xa)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT3_EXT;if(i===ba)return r.COMPRESSED_SRGB_ALPHA_S3TC_DXT5_EXT}else return null;else if(r=t.get("WEBGL_compressed_texture_s3tc"),r!==null){if(i===va)return r.COMPRESSED_RGB_S3TC_DXT1_EXT;if(i===ya)return r.COMPRESSED_RGBA_S3TC_DXT1_EXT;if(i===xa)return r.COMPRESSED_RGBA_S3TC_DXT3_EXT;if(i===ba)return r.COMPRESSED_RGBA_S3TC_DXT5_EXT}else return null;if(i===Wc||i===Xc||i===qc||i===$c)if(r=t.get("WEBGL_compressed_texture_pvrtc"),r!==null){if(i===Wc)return r.COMPRESSED_RGB_PVRTC_4BPPV1_IMG;if(i===Xc)return r.COMPRESSED_RGB_PVRTC_2BPPV1_IMG;if(i===qc)return r.COMPRESSED_RGBA_PVRTC_4BPPV1_IMG;if(i===$c)return r.COMPRESSED_RGBA_PVRTC_2BPPV1_IMG}else return null;if(i===Yc||i===Zc||i===Jc||i===Kc||i===jc||i===Ma||i===Qc)if(r=t.get("WEBGL_compressed_texture_etc"),r!==null){if(i===Yc||i===Zc)return o===ce?r.COMPRESSED_SRGB8_ETC2:r.COMPRESSED_RGB8_ETC2;if(i===Jc)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ETC2_EAC:r.COMPRESSED_RGBA8_ETC2_EAC;if(i===Kc)return r.COMPRESSED_R11_EAC;if(i===jc)return r.COMPRESSED_SIGNED_R11_EAC;if(i===Ma)return r.COMPRESSED_RG11_EAC;if(i===Qc)return r.COMPRESSED_SIGNED_RG11_EAC}else return null;if(i===tu||i===eu||i===nu||i===iu||i===su||i===ru||i===ou||i===au||i===lu||i===cu||i===uu||i===hu||i===fu||i===du)if(r=t.get("WEBGL_compressed_texture_astc"),r!==null){if(i===tu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_4x4_KHR:r.COMPRESSED_RGBA_ASTC_4x4_KHR;if(i===eu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x4_KHR:r.COMPRESSED_RGBA_ASTC_5x4_KHR;if(i===nu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_5x5_KHR:r.COMPRESSED_RGBA_ASTC_5x5_KHR;if(i===iu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x5_KHR:r.COMPRESSED_RGBA_ASTC_6x5_KHR;if(i===su)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_6x6_KHR:r.COMPRESSED_RGBA_ASTC_6x6_KHR;if(i===ru)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x5_KHR:r.COMPRESSED_RGBA_ASTC_8x5_KHR;if(i===ou)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x6_KHR:r.COMPRESSED_RGBA_ASTC_8x6_KHR;if(i===au)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_8x8_KHR:r.COMPRESSED_RGBA_ASTC_8x8_KHR;if(i===lu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x5_KHR:r.COMPRESSED_RGBA_ASTC_10x5_KHR;if(i===cu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x6_KHR:r.COMPRESSED_RGBA_ASTC_10x6_KHR;if(i===uu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x8_KHR:r.COMPRESSED_RGBA_ASTC_10x8_KHR;if(i===hu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_10x10_KHR:r.COMPRESSED_RGBA_ASTC_10x10_KHR;if(i===fu)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x10_KHR:r.COMPRESSED_RGBA_ASTC_12x10_KHR;if(i===du)return o===ce?r.COMPRESSED_SRGB8_ALPHA8_ASTC_12x12_KHR:r.COMPRESSED_RGBA_ASTC_12x12_KHR}else return null;if(i===pu||i===mu||i===gu)if(r=t.get("EXT_texture_compression_bptc"),r!==null){if(i===pu)return o===ce?r.COMPRESSED_SRGB_ALPHA_BPTC_UNORM_EXT:r.COMPRESSED_RGBA_BPTC_UNORM_EXT;if(i===mu)return r.COMPRESSED_RGB_BPTC_SIGNED_FLOAT_EXT;if(i===gu)return r.COMPRESSED_RGB_BPTC_UNSIGNED_FLOAT_EXT}else return null;if(i===_u||i===vu||i===Sa||i===yu)if(r=t.get("EXT_texture_compression_rgtc"),r!==null){if(i===_u)return r.COMPRESSED_RED_RGTC1_EXT;if(i===vu)return r.COMPRESSED_SIGNED_RED_RGTC1_EXT;if(i===Sa)return r.COMPRESSED_RED_GREEN_RGTC2_EXT;if(i===yu)return r.COMPRESSED_SIGNED_RED_GREEN_RGTC2_EXT}else return null;return i===Bs?n.UNSIGNED_INT_24_8:n[i]!==void 0?n[i]:null}return{convert:e}}var f1=`
void main() {

	gl_Position = vec4( position, 1.0 );

}`,d1=`
uniform sampler2DArray depthColor;
uniform float depthWidth;
uniform float depthHeight;

void main() {

	vec2 coord = vec2( gl_FragCoord.x / depthWidth, gl_FragCoord.y / depthHeight );

	if ( coord.x >= 1.0 ) {

		gl_FragDepth = texture( depthColor, vec3( coord.x - 1.0, coord.y, 1 ) ).r;

	} else {

		gl_FragDepth = texture( depthColor, vec3( coord.x, coord.y, 0 ) ).r;

	}

}`,rd=class{constructor(){this.texture=null,this.mesh=null,this.depthNear=0,this.depthFar=0}init(t,e){if(this.texture===null){let i=new Ko(t.texture);(t.depthNear!==e.depthNear||t.depthFar!==e.depthFar)&&(this.depthNear=t.depthNear,this.depthFar=t.depthFar),this.texture=i}}getMesh(t){if(this.texture!==null&&this.mesh===null){let e=t.cameras[0].viewport,i=new Ln({vertexShader:f1,fragmentShader:d1,uniforms:{depthColor:{value:this.texture},depthWidth:{value:e.z},depthHeight:{value:e.w}}});this.mesh=new Le(new aa(20,20),i)}return this.mesh}reset(){this.texture=null,this.mesh=null}getDepthTexture(){return this.texture}},od=class extends ei{constructor(t,e){super();let i=this,s=null,r=1,o=null,a="local-floor",l=1,c=null,u=null,h=null,d=null,f=null,g=null,v=typeof XRWebGLBinding<"u",_=new rd,m={},y=e.getContextAttributes(),M=null,b=null,E=[],A=[],x=new rt,T=null,D=null,R=new gn;R.viewport=new Te;let P=new gn;P.viewport=new Te;let F=[R,P],B=new Dc,I=null,W=null;this.cameraAutoUpdate=!0,this.enabled=!1,this.isPresenting=!1,this.getController=function(Z){let dt=E[Z];return dt===void 0&&(dt=new Lr,E[Z]=dt),dt.getTargetRaySpace()},this.getControllerGrip=function(Z){let dt=E[Z];return dt===void 0&&(dt=new Lr,E[Z]=dt),dt.getGripSpace()},this.getHand=function(Z){let dt=E[Z];return dt===void 0&&(dt=new Lr,E[Z]=dt),dt.getHandSpace()};function X(Z){let dt=A.indexOf(Z.inputSource);if(dt===-1)return;let xt=E[dt];xt!==void 0&&(xt.update(Z.inputSource,Z.frame,c||o),xt.dispatchEvent({type:Z.type,data:Z.inputSource}))}function k(){s.removeEventListener("select",X),s.removeEventListener("selectstart",X),s.removeEventListener("selectend",X),s.removeEventListener("squeeze",X),s.removeEventListener("squeezestart",X),s.removeEventListener("squeezeend",X),s.removeEventListener("end",k),s.removeEventListener("inputsourceschange",Q);for(let Z=0;Z<E.length;Z++){let dt=A[Z];dt!==null&&(A[Z]=null,E[Z].disconnect(dt))}I=null,W=null,_.reset();for(let Z in m)delete m[Z];if(t.setRenderTarget(M),f=null,d=null,h=null,s=null,b=null,Lt.stop(),i.isPresenting=!1,t.setPixelRatio(T),t.setSize(x.width,x.height,!1),D!==null){let Z=D.camera;Z.fov=D.fov,Z.zoom=D.zoom,Z.updateProjectionMatrix(),D=null}i.dispatchEvent({type:"sessionend"})}this.setFramebufferScaleFactor=function(Z){r=Z,i.isPresenting===!0&&It("WebXRManager: Cannot change framebuffer scale while presenting.")},this.setReferenceSpaceType=function(Z){a=Z,i.isPresenting===!0&&It("WebXRManager: Cannot change reference space type while presenting.")},this.getReferenceSpace=function(){return c||o},this.setReferenceSpace=function(Z){c=Z},this.getBaseLayer=function(){return d!==null?d:f},this.getBinding=function(){return h===null&&v&&(h=new XRWebGLBinding(s,e)),h},this.getFrame=function(){return g},this.getSession=function(){return s},this.setSession=async function(Z){if(s=Z,s!==null){if(M=t.getRenderTarget(),s.addEventListener("select",X),s.addEventListener("selectstart",X),s.addEventListener("selectend",X),s.addEventListener("squeeze",X),s.addEventListener("squeezestart",X),s.addEventListener("squeezeend",X),s.addEventListener("end",k),s.addEventListener("inputsourceschange",Q),y.xrCompatible!==!0&&await e.makeXRCompatible(),T=t.getPixelRatio(),t.getSize(x),v&&"createProjectionLayer"in XRWebGLBinding.prototype){let xt=null,Ct=null,mt=null;y.depth&&(mt=y.stencil?e.DEPTH24_STENCIL8:e.DEPTH_COMPONENT24,xt=y.stencil?ki:Li,Ct=y.stencil?Bs:ni);let Ot={colorFormat:e.RGBA8,depthFormat:mt,scaleFactor:r};h=this.getBinding(),d=h.createProjectionLayer(Ot),s.updateRenderState({layers:[d]}),t.setPixelRatio(1),t.setSize(d.textureWidth,d.textureHeight,!1),b=new In(d.textureWidth,d.textureHeight,{format:si,type:Sn,depthTexture:new Ui(d.textureWidth,d.textureHeight,Ct,void 0,void 0,void 0,void 0,void 0,void 0,xt),stencilBuffer:y.stencil,colorSpace:t.outputColorSpace,samples:y.antialias?4:0,resolveDepthBuffer:d.ignoreDepthValues===!1,resolveStencilBuffer:d.ignoreDepthValues===!1,storeMultisampledDepthBuffer:d.ignoreDepthValues===!1,storeMultisampledStencilBuffer:d.ignoreDepthValues===!1})}else{let xt={antialias:y.antialias,alpha:!0,depth:y.depth,stencil:y.stencil,framebufferScaleFactor:r};f=new XRWebGLLayer(s,e,xt),s.updateRenderState({baseLayer:f}),t.setPixelRatio(1),t.setSize(f.framebufferWidth,f.framebufferHeight,!1),b=new In(f.framebufferWidth,f.framebufferHeight,{format:si,type:Sn,colorSpace:t.outputColorSpace,stencilBuffer:y.stencil,resolveDepthBuffer:f.ignoreDepthValues===!1,resolveStencilBuffer:f.ignoreDepthValues===!1,storeMultisampledDepthBuffer:f.ignoreDepthValues===!1,storeMultisampledStencilBuffer:f.ignoreDepthValues===!1})}b.isXRRenderTarget=!0,this.setFoveation(l),c=null,o=await s.requestReferenceSpace(a),Lt.setContext(s),Lt.start(),i.isPresenting=!0,i.dispatchEvent({type:"sessionstart"})}},this.getEnvironmentBlendMode=function(){if(s!==null)return s.environmentBlendMode},this.getDepthTexture=function(){return _.getDepthTexture()};function Q(Z){for(let dt=0;dt<Z.removed.length;dt++){let xt=Z.removed[dt],Ct=A.indexOf(xt);Ct>=0&&(A[Ct]=null,E[Ct].disconnect(xt))}for(let dt=0;dt<Z.added.length;dt++){let xt=Z.added[dt],Ct=A.indexOf(xt);if(Ct===-1){for(let Ot=0;Ot<E.length;Ot++)if(Ot>=A.length){A.push(xt),Ct=Ot;break}else if(A[Ot]===null){A[Ot]=xt,Ct=Ot;break}if(Ct===-1)break}let mt=E[Ct];mt&&mt.connect(xt)}}function G(Z,dt){dt===null?Z.matrixWorld.copy(Z.matrix):Z.matrixWorld.multiplyMatrices(dt.matrixWorld,Z.matrix),Z.matrixWorldInverse.copy(Z.matrixWorld).invert()}this.updateCamera=function(Z){if(s===null)return;let dt=Z.near,xt=Z.far;_.texture!==null&&(_.depthNear>0&&(dt=_.depthNear),_.depthFar>0&&(xt=_.depthFar)),B.near=P.near=R.near=dt,B.far=P.far=R.far=xt,(I!==B.near||W!==B.far)&&(s.updateRenderState({depthNear:B.near,depthFar:B.far}),I=B.near,W=B.far),B.layers.mask=Z.layers.mask|6,R.layers.mask=B.layers.mask&-5,P.layers.mask=B.layers.mask&-3;let Ct=Z.parent,mt=B.cameras;G(B,Ct);for(let Ot=0;Ot<mt.length;Ot++)G(mt[Ot],Ct);B.projectionMatrix.copy(R.projectionMatrix),B.projectionMatrixInverse.copy(R.projectionMatrixInverse),D===null&&Z.isPerspectiveCamera&&(D={camera:Z,fov:Z.fov,zoom:Z.zoom}),tt(Z,B,Ct)};function tt(Z,dt,xt){xt===null?Z.matrix.copy(dt.matrixWorld):(Z.matrix.copy(xt.matrixWorld),Z.matrix.invert(),Z.matrix.multiply(dt.matrixWorld)),Z.matrix.decompose(Z.position,Z.quaternion,Z.scale),Z.updateMatrixWorld(!0),Z.projectionMatrix.copy(dt.projectionMatrix),Z.projectionMatrixInverse.copy(dt.projectionMatrixInverse),Z.isPerspectiveCamera&&(Z.fov=Ir*2*Math.atan(1/Z.projectionMatrix.elements[5]),Z.zoom=1)}this.getCamera=function(){return B},this.getFoveation=function(){if(!(d===null&&f===null))return l},this.setFoveation=function(Z){l=Z,d!==null&&(d.fixedFoveation=Z),f!==null&&f.fixedFoveation!==void 0&&(f.fixedFoveation=Z)},this.hasDepthSensing=function(){return _.texture!==null},this.getDepthSensingMesh=function(){return _.getMesh(B)},this.getCameraTexture=function(Z){return m[Z]};let et=null;function bt(Z,dt){if(u=dt.getViewerPose(c||o),g=dt,u!==null){let xt=u.views;f!==null&&(t.setRenderTargetFramebuffer(b,f.framebuffer),t.setRenderTarget(b));let Ct=!1;xt.length!==B.cameras.length&&(B.cameras.length=0,Ct=!0);for(let Dt=0;Dt<xt.length;Dt++){let ne=xt[Dt],oe=null;if(f!==null)oe=f.getViewport(ne);else{let en=h.getViewSubImage(d,ne);oe=en.viewport,Dt===0&&(t.setRenderTargetTextures(b,en.colorTexture,en.depthStencilTexture),t.setRenderTarget(b))}let Yt=F[Dt];Yt===void 0&&(Yt=new gn,Yt.layers.enable(Dt),Yt.viewport=new Te,F[Dt]=Yt),Yt.matrix.fromArray(ne.transform.matrix),Yt.matrix.decompose(Yt.position,Yt.quaternion,Yt.scale),Yt.projectionMatrix.fromArray(ne.projectionMatrix),Yt.projectionMatrixInverse.copy(Yt.projectionMatrix).invert(),Yt.viewport.set(oe.x,oe.y,oe.width,oe.height),Dt===0&&(B.matrix.copy(Yt.matrix),B.matrix.decompose(B.position,B.quaternion,B.scale)),Ct===!0&&B.cameras.push(Yt)}let mt=s.enabledFeatures;if(mt&&mt.includes("depth-sensing")&&s.depthUsage=="gpu-optimized"&&v){h=i.getBinding();let Dt=h.getDepthInformation(xt[0]);Dt&&Dt.isValid&&Dt.texture&&_.init(Dt,s.renderState)}if(mt&&mt.includes("camera-access")&&v){t.state.unbindTexture(),h=i.getBinding();for(let Dt=0;Dt<xt.length;Dt++){let ne=xt[Dt].camera;if(ne){let oe=m[ne];oe||(oe=new Ko,m[ne]=oe);let Yt=h.getCameraImage(ne);oe.sourceTexture=Yt}}}}for(let xt=0;xt<E.length;xt++){let Ct=A[xt],mt=E[xt];Ct!==null&&mt!==void 0&&mt.update(Ct,dt,c||o)}et&&et(Z,dt),dt.detectedPlanes&&i.dispatchEvent({type:"planesdetected",data:dt}),g=null}let Lt=new m0;Lt.setAnimationLoop(bt),this.setAnimationLoop=function(Z){et=Z},this.dispose=function(){}}},p1=new ee,T0=new kt;T0.set(-1,0,0,0,1,0,0,0,1);function m1(n,t){function e(_,m){_.matrixAutoUpdate===!0&&_.updateMatrix(),m.value.copy(_.matrix)}function i(_,m){m.color.getRGB(_.fogColor.value,$f(n)),m.isFog?(_.fogNear.value=m.near,_.fogFar.value=m.far):m.isFogExp2&&(_.fogDensity.value=m.density)}function s(_,m,y,M,b){m.isNodeMaterial?m.uniformsNeedUpdate=!1:m.isMeshBasicMaterial?r(_,m):m.isMeshLambertMaterial?(r(_,m),m.envMap&&(_.envMapIntensity.value=m.envMapIntensity)):m.isMeshToonMaterial?(r(_,m),h(_,m)):m.isMeshPhongMaterial?(r(_,m),u(_,m),m.envMap&&(_.envMapIntensity.value=m.envMapIntensity)):m.isMeshStandardMaterial?(r(_,m),d(_,m),m.isMeshPhysicalMaterial&&f(_,m,b)):m.isMeshMatcapMaterial?(r(_,m),g(_,m)):m.isMeshDepthMaterial?r(_,m):m.isMeshDistanceMaterial?(r(_,m),v(_,m)):m.isMeshNormalMaterial?r(_,m):m.isLineBasicMaterial?(o(_,m),m.isLineDashedMaterial&&a(_,m)):m.isPointsMaterial?l(_,m,y,M):m.isSpriteMaterial?c(_,m):m.isShadowMaterial?(_.color.value.copy(m.color),_.opacity.value=m.opacity):m.isShaderMaterial&&(m.uniformsNeedUpdate=!1)}function r(_,m){_.opacity.value=m.opacity,m.color&&_.diffuse.value.copy(m.color),m.emissive&&_.emissive.value.copy(m.emissive).multiplyScalar(m.emissiveIntensity),m.map&&(_.map.value=m.map,e(m.map,_.mapTransform)),m.alphaMap&&(_.alphaMap.value=m.alphaMap,e(m.alphaMap,_.alphaMapTransform)),m.bumpMap&&(_.bumpMap.value=m.bumpMap,e(m.bumpMap,_.bumpMapTransform),_.bumpScale.value=m.bumpScale,m.side===vn&&(_.bumpScale.value*=-1)),m.normalMap&&(_.normalMap.value=m.normalMap,e(m.normalMap,_.normalMapTransform),_.normalScale.value.copy(m.normalScale),m.side===vn&&_.normalScale.value.negate()),m.displacementMap&&(_.displacementMap.value=m.displacementMap,e(m.displacementMap,_.displacementMapTransform),_.displacementScale.value=m.displacementScale,_.displacementBias.value=m.displacementBias),m.emissiveMap&&(_.emissiveMap.value=m.emissiveMap,e(m.emissiveMap,_.emissiveMapTransform)),m.specularMap&&(_.specularMap.value=m.specularMap,e(m.specularMap,_.specularMapTransform)),m.alphaTest>0&&(_.alphaTest.value=m.alphaTest);let y=t.get(m),M=y.envMap,b=y.envMapRotation;M&&(_.envMap.value=M,_.envMapRotation.value.setFromMatrix4(p1.makeRotationFromEuler(b)).transpose(),M.isCubeTexture&&M.isRenderTargetTexture===!1&&_.envMapRotation.value.premultiply(T0),_.reflectivity.value=m.reflectivity,_.ior.value=m.ior,_.refractionRatio.value=m.refractionRatio),m.lightMap&&(_.lightMap.value=m.lightMap,_.lightMapIntensity.value=m.lightMapIntensity,e(m.lightMap,_.lightMapTransform)),m.aoMap&&(_.aoMap.value=m.aoMap,_.aoMapIntensity.value=m.aoMapIntensity,e(m.aoMap,_.aoMapTransform))}function o(_,m){_.diffuse.value.copy(m.color),_.opacity.value=m.opacity,m.map&&(_.map.value=m.map,e(m.map,_.mapTransform))}function a(_,m){_.dashSize.value=m.dashSize,_.totalSize.value=m.dashSize+m.gapSize,_.scale.value=m.scale}function l(_,m,y,M){_.diffuse.value.copy(m.color),_.opacity.value=m.opacity,_.size.value=m.size*y,_.scale.value=M*.5,m.map&&(_.map.value=m.map,e(m.map,_.uvTransform)),m.alphaMap&&(_.alphaMap.value=m.alphaMap,e(m.alphaMap,_.alphaMapTransform)),m.alphaTest>0&&(_.alphaTest.value=m.alphaTest)}function c(_,m){_.diffuse.value.copy(m.color),_.opacity.value=m.opacity,_.rotation.value=m.rotation,m.map&&(_.map.value=m.map,e(m.map,_.mapTransform)),m.alphaMap&&(_.alphaMap.value=m.alphaMap,e(m.alphaMap,_.alphaMapTransform)),m.alphaTest>0&&(_.alphaTest.value=m.alphaTest)}function u(_,m){_.specular.value.copy(m.specular),_.shininess.value=Math.max(m.shininess,1e-4)}function h(_,m){m.gradientMap&&(_.gradientMap.value=m.gradientMap)}function d(_,m){_.metalness.value=m.metalness,m.metalnessMap&&(_.metalnessMap.value=m.metalnessMap,e(m.metalnessMap,_.metalnessMapTransform)),_.roughness.value=m.roughness,m.roughnessMap&&(_.roughnessMap.value=m.roughnessMap,e(m.roughnessMap,_.roughnessMapTransform)),m.envMap&&(_.envMapIntensity.value=m.envMapIntensity)}function f(_,m,y){_.ior.value=m.ior,m.diffuseRoughness>0&&(_.diffuseRoughness.value=m.diffuseRoughness,m.diffuseRoughnessMap&&(_.diffuseRoughnessMap.value=m.diffuseRoughnessMap,e(m.diffuseRoughnessMap,_.diffuseRoughnessMapTransform))),m.sheen>0&&(_.sheenColor.value.copy(m.sheenColor).multiplyScalar(m.sheen),_.sheenRoughness.value=m.sheenRoughness,m.sheenColorMap&&(_.sheenColorMap.value=m.sheenColorMap,e(m.sheenColorMap,_.sheenColorMapTransform)),m.sheenRoughnessMap&&(_.sheenRoughnessMap.value=m.sheenRoughnessMap,e(m.sheenRoughnessMap,_.sheenRoughnessMapTransform))),m.clearcoat>0&&(_.clearcoat.value=m.clearcoat,_.clearcoatRoughness.value=m.clearcoatRoughness,m.clearcoatMap&&(_.clearcoatMap.value=m.clearcoatMap,e(m.clearcoatMap,_.clearcoatMapTransform)),m.clearcoatRoughnessMap&&(_.clearcoatRoughnessMap.value=m.clearcoatRoughnessMap,e(m.clearcoatRoughnessMap,_.clearcoatRoughnessMapTransform)),m.clearcoatNormalMap&&(_.clearcoatNormalMap.value=m.clearcoatNormalMap,e(m.clearcoatNormalMap,_.clearcoatNormalMapTransform),_.clearcoatNormalScale.value.copy(m.clearcoatNormalScale),m.side===vn&&_.clearcoatNormalScale.value.negate())),m.dispersion>0&&(_.dispersion.value=m.dispersion),m.retroreflectivity>0&&(_.retroreflectivity.value=m.retroreflectivity),m.iridescence>0&&(_.iridescence.value=m.iridescence,_.iridescenceIOR.value=m.iridescenceIOR,_.iridescenceThicknessMinimum.value=m.iridescenceThicknessMinimum,_.iridescenceThicknessMaximum.value=m.iridescenceThicknessMaximum,m.iridescenceMap&&(_.iridescenceMap.value=m.iridescenceMap,e(m.iridescenceMap,_.iridescenceMapTransform)),m.iridescenceThicknessMap&&(_.iridescenceThicknessMap.value=m.iridescenceThicknessMap,e(m.iridescenceThicknessMap,_.iridescenceThicknessMapTransform))),m.transmission>0&&(_.transmission.value=m.transmission,_.transmissionSamplerMap.value=y.texture,_.transmissionSamplerSize.value.set(y.width,y.height),m.transmissionMap&&(_.transmissionMap.value=m.transmissionMap,e(m.transmissionMap,_.transmissionMapTransform)),_.thickness.value=m.thickness,m.thicknessMap&&(_.thicknessMap.value=m.thicknessMap,e(m.thicknessMap,_.thicknessMapTransform)),_.attenuationDistance.value=m.attenuationDistance,_.attenuationColor.value.copy(m.attenuationColor)),m.anisotropy>0&&(_.anisotropyVector.value.set(m.anisotropy*Math.cos(m.anisotropyRotation),m.anisotropy*Math.sin(m.anisotropyRotation)),m.anisotropyMap&&(_.anisotropyMap.value=m.anisotropyMap,e(m.anisotropyMap,_.anisotropyMapTransform))),_.specularIntensity.value=m.specularIntensity,_.specularColor.value.copy(m.specularColor),m.specularColorMap&&(_.specularColorMap.value=m.specularColorMap,e(m.specularColorMap,_.specularColorMapTransform)),m.specularIntensityMap&&(_.specularIntensityMap.value=m.specularIntensityMap,e(m.specularIntensityMap,_.specularIntensityMapTransform))}function g(_,m){m.matcap&&(_.matcap.value=m.matcap)}function v(_,m){let y=t.get(m).light;_.referencePosition.value.setFromMatrixPosition(y.matrixWorld),_.nearDistance.value=y.shadow.camera.near,_.farDistance.value=y.shadow.camera.far}return{refreshFogUniforms:i,refreshMaterialUniforms:s}}function g1(n,t,e,i){let s={},r={};function o(y,M){let b=M.program;i.uniformBlockBinding(y,b,s[y.id])}function a(y,M){let b=s[y.id];b===void 0&&(g(y),b=l(y),s[y.id]=b,y.addEventListener("dispose",_));let E=M.program;i.updateUBOMapping(y,E);let A=t.render.frame;r[y.id]!==A&&(c(y),r[y.id]=A)}function l(y){let M=n.createBuffer(),b=y.__size,E=y.usage;return n.bindBuffer(n.UNIFORM_BUFFER,M),n.bufferData(n.UNIFORM_BUFFER,b,E),n.bindBuffer(n.UNIFORM_BUFFER,null),M}function c(y){let M=s[y.id],b=y.uniforms,E=y.__cache;n.bindBuffer(n.UNIFORM_BUFFER,M);for(let A=0,x=b.length;A<x;A++){let T=b[A];if(Array.isArray(T))for(let D=0,R=T.length;D<R;D++)u(T[D],A,D,E);else u(T,A,0,E)}n.bindBuffer(n.UNIFORM_BUFFER,null)}function u(y,M,b,E){if(d(y,M,b,E)===!0){let A=y.__offset,x=y.value;if(Array.isArray(x)){let T=0;for(let D=0;D<x.length;D++){let R=x[D],P=v(R,!0);h(R,y.__data,T),T+=P.storage/Float32Array.BYTES_PER_ELEMENT}}else h(x,y.__data,0);n.bufferSubData(n.UNIFORM_BUFFER,A,y.__data)}}function h(y,M,b){typeof y=="number"||typeof y=="boolean"?M[b]=y:y.isMatrix3?(M[b]=y.elements[0],M[b+1]=y.elements[1],M[b+2]=y.elements[2],M[b+3]=0,M[b+4]=y.elements[3],M[b+5]=y.elements[4],M[b+6]=y.elements[5],M[b+7]=0,M[b+8]=y.elements[6],M[b+9]=y.elements[7],M[b+10]=y.elements[8],M[b+11]=0):ArrayBuffer.isView(y)?M.set(y.subarray(0,M.length-b),b):y.toArray(M,b)}function d(y,M,b,E){let A=y.value,x=M+"_"+b;if(Array.isArray(A)){E[x]===void 0&&(E[x]=[]);let T=E[x],D=!1;for(let R=0;R<A.length;R++)f(A[R],T,R)===!0&&(D=!0);return D}return f(A,E,x)}function f(y,M,b){if(M[b]===void 0)return typeof y=="number"||typeof y=="boolean"?M[b]=y:ArrayBuffer.isView(y)?M[b]=y.slice():M[b]=y.clone(),!0;{let E=M[b];if(typeof y=="number"||typeof y=="boolean"){if(E!==y)return M[b]=y,!0}else{if(ArrayBuffer.isView(y))return!0;if(E.equals(y)===!1)return E.copy(y),!0}}return!1}function g(y){let M=y.uniforms,b=0,E=16;for(let x=0,T=M.length;x<T;x++){let D=Array.isArray(M[x])?M[x]:[M[x]];for(let R=0,P=D.length;R<P;R++){let F=D[R],B=Array.isArray(F.value)?F.value:[F.value],I=Array.isArray(M[x])||Array.isArray(F.value),W=b;for(let k=0,Q=B.length;k<Q;k++){let G=B[k],tt=v(G,I),et=b%E,bt=et%tt.boundary,Lt=et+bt;b+=bt,Lt!==0&&E-Lt<tt.storage&&(b+=E-Lt),k===0&&(W=b),b+=tt.storage}let X=F.type==="int"?Int32Array:F.type==="uint"?Uint32Array:Float32Array;F.__data=new X((b-W)/Float32Array.BYTES_PER_ELEMENT),F.__offset=W}}let A=b%E;return A>0&&(b+=E-A),y.__size=b,y.__cache={},this}function v(y,M){let b={boundary:0,storage:0};return typeof y=="number"||typeof y=="boolean"?(b.boundary=4,b.storage=4):y.isVector2?(b.boundary=8,b.storage=8):y.isVector3||y.isColor?(b.boundary=16,b.storage=12):y.isVector4?(b.boundary=16,b.storage=16):y.isMatrix3?(b.boundary=16,b.storage=48):y.isMatrix4?(b.boundary=16,b.storage=64):y.isTexture?It("WebGLRenderer: Texture samplers can not be part of an uniforms group."):ArrayBuffer.isView(y)?(b.boundary=16,b.storage=y.byteLength):It("WebGLRenderer: Unsupported uniform value type.",y),M===!0&&(b.boundary=16,b.storage=Math.ceil(b.storage/16)*16),b}function _(y){let M=y.target;M.removeEventListener("dispose",_),n.deleteBuffer(s[M.id]),delete s[M.id],delete r[M.id]}function m(){for(let y in s)n.deleteBuffer(s[y]);s={},r={}}return{bind:o,update:a,dispose:m}}var _1=new Uint16Array([12469,15057,12620,14925,13266,14620,13807,14376,14323,13990,14545,13625,14713,13328,14840,12882,14931,12528,14996,12233,15039,11829,15066,11525,15080,11295,15085,10976,15082,10705,15073,10495,13880,14564,13898,14542,13977,14430,14158,14124,14393,13732,14556,13410,14702,12996,14814,12596,14891,12291,14937,11834,14957,11489,14958,11194,14943,10803,14921,10506,14893,10278,14858,9960,14484,14039,14487,14025,14499,13941,14524,13740,14574,13468,14654,13106,14743,12678,14818,12344,14867,11893,14889,11509,14893,11180,14881,10751,14852,10428,14812,10128,14765,9754,14712,9466,14764,13480,14764,13475,14766,13440,14766,13347,14769,13070,14786,12713,14816,12387,14844,11957,14860,11549,14868,11215,14855,10751,14825,10403,14782,10044,14729,9651,14666,9352,14599,9029,14967,12835,14966,12831,14963,12804,14954,12723,14936,12564,14917,12347,14900,11958,14886,11569,14878,11247,14859,10765,14828,10401,14784,10011,14727,9600,14660,9289,14586,8893,14508,8533,15111,12234,15110,12234,15104,12216,15092,12156,15067,12010,15028,11776,14981,11500,14942,11205,14902,10752,14861,10393,14812,9991,14752,9570,14682,9252,14603,8808,14519,8445,14431,8145,15209,11449,15208,11451,15202,11451,15190,11438,15163,11384,15117,11274,15055,10979,14994,10648,14932,10343,14871,9936,14803,9532,14729,9218,14645,8742,14556,8381,14461,8020,14365,7603,15273,10603,15272,10607,15267,10619,15256,10631,15231,10614,15182,10535,15118,10389,15042,10167,14963,9787,14883,9447,14800,9115,14710,8665,14615,8318,14514,7911,14411,7507,14279,7198,15314,9675,15313,9683,15309,9712,15298,9759,15277,9797,15229,9773,15166,9668,15084,9487,14995,9274,14898,8910,14800,8539,14697,8234,14590,7790,14479,7409,14367,7067,14178,6621,15337,8619,15337,8631,15333,8677,15325,8769,15305,8871,15264,8940,15202,8909,15119,8775,15022,8565,14916,8328,14804,8009,14688,7614,14569,7287,14448,6888,14321,6483,14088,6171,15350,7402,15350,7419,15347,7480,15340,7613,15322,7804,15287,7973,15229,8057,15148,8012,15046,7846,14933,7611,14810,7357,14682,7069,14552,6656,14421,6316,14251,5948,14007,5528,15356,5942,15356,5977,15353,6119,15348,6294,15332,6551,15302,6824,15249,7044,15171,7122,15070,7050,14949,6861,14818,6611,14679,6349,14538,6067,14398,5651,14189,5311,13935,4958,15359,4123,15359,4153,15356,4296,15353,4646,15338,5160,15311,5508,15263,5829,15188,6042,15088,6094,14966,6001,14826,5796,14678,5543,14527,5287,14377,4985,14133,4586,13869,4257,15360,1563,15360,1642,15358,2076,15354,2636,15341,3350,15317,4019,15273,4429,15203,4732,15105,4911,14981,4932,14836,4818,14679,4621,14517,4386,14359,4156,14083,3795,13808,3437,15360,122,15360,137,15358,285,15355,636,15344,1274,15322,2177,15281,2765,15215,3223,15120,3451,14995,3569,14846,3567,14681,3466,14511,3305,14344,3121,14037,2800,13753,2467,15360,0,15360,1,15359,21,15355,89,15346,253,15325,479,15287,796,15225,1148,15133,1492,15008,1749,14856,1882,14685,1886,14506,1783,14324,1608,13996,1398,13702,1183]),mi=null;function v1(){return mi===null&&(mi=new qo(_1,16,16,fs,ii),mi.name="DFG_LUT",mi.minFilter=_n,mi.magFilter=_n,mi.wrapS=li,mi.wrapT=li,mi.generateMipmaps=!1,mi.needsUpdate=!0),mi}var Tu=class{constructor(t={}){let{canvas:e=Ng(),context:i=null,depth:s=!0,stencil:r=!1,alpha:o=!1,antialias:a=!1,premultipliedAlpha:l=!0,preserveDrawingBuffer:c=!1,powerPreference:u="default",failIfMajorPerformanceCaveat:h=!1,reversedDepthBuffer:d=!1,outputBufferType:f=Sn}=t;this.isWebGLRenderer=!0;let g;if(i!==null){if(typeof WebGLRenderingContext<"u"&&i instanceof WebGLRenderingContext)throw new Error("THREE.WebGLRenderer: WebGL 1 is not supported since r163.");g=i.getContextAttributes().alpha}else g=o;let v=f,_=new Set([Hc,Gc,Vc]),m=new Set([Sn,ni,Wr,Bs,kc,Bc]),y=new Uint32Array(4),M=new Int32Array(4),b={textures:[],min:[],max:[],resolution:[]},E=null,A=null,x=[],T=[],D=null;this.domElement=e,this.debug={checkShaderErrors:!0,diagnostics:{keywords:!1},onShaderError:null},this.autoClear=!0,this.autoClearColor=!0,this.autoClearDepth=!0,this.autoClearStencil=!0,this.sortObjects=!0,this.clippingPlanes=[],this.localClippingEnabled=!1,this.toneMapping=pi,this.toneMappingExposure=1,this.transmissionResolutionScale=1;let R=this,P=!1,F=null,B=null,I=null,W=null;this._outputColorSpace=Rn;let X=0,k=0,Q=null,G=-1,tt=null,et=new Te,bt=new Te,Lt=null,Z=new Vt(0),dt=0,xt=e.width,Ct=e.height,mt=1,Ot=null,Pe=null,Dt=new Te(0,0,xt,Ct),ne=new Te(0,0,xt,Ct),oe=!1,Yt=new es,en=new lc,ke=!1,yn=!1,Ae=new ee,ri=new N,Ye=new Te,Un={background:null,fog:null,environment:null,overrideMaterial:null,isScene:!0},Fn=!1;function On(){return Q===null?mt:1}let O=i;function kn(w,U){return e.getContext(w,U)}let ye,xe,pt,Be,Nt,Bt,C,S,V,nt,j,ot,ht,Y,J,lt,L,K,$,ct,st,at,Et;try{let w={alpha:!0,depth:s,stencil:r,antialias:a,premultipliedAlpha:l,preserveDrawingBuffer:c,powerPreference:u,failIfMajorPerformanceCaveat:h};if("setAttribute"in e&&e.setAttribute("data-engine",`three.js r${"187"}`),e.addEventListener("webglcontextlost",Rt,!1),e.addEventListener("webglcontextrestored",Gt,!1),e.addEventListener("webglcontextcreationerror",gt,!1),O===null){let U="webgl2";if(O=kn(U,w),O===null)throw kn(U)?new Error("THREE.WebGLRenderer: Error creating WebGL context with your selected attributes."):new Error("THREE.WebGLRenderer: Error creating WebGL context.")}Wt()}catch(w){throw e.removeEventListener("webglcontextlost",Rt,!1),e.removeEventListener("webglcontextrestored",Gt,!1),e.removeEventListener("webglcontextcreationerror",gt,!1),Ft("WebGLRenderer: "+w.message),w}function Wt(){ye=new RS(O),ye.init(),st=new h1(O,ye),xe=new vS(O,ye,t,st),pt=new c1(O,ye),xe.reversedDepthBuffer&&d&&pt.buffers.depth.setReversed(!0),B=O.createFramebuffer(),I=O.createFramebuffer(),W=O.createFramebuffer(),Be=new DS(O),Nt=new Zw,Bt=new u1(O,ye,pt,Nt,xe,st,Be),C=new CS(R),S=new Nx(O),at=new gS(O,S),V=new PS(O,S,Be,at),nt=new NS(O,V,S,at,Be),K=new LS(O,xe,Bt),J=new yS(Nt),j=new Yw(R,C,ye,xe,at,J),ot=new m1(R,Nt),ht=new Kw,Y=new i1(ye),L=new mS(R,C,pt,nt,g,l),lt=new l1(R,nt,xe),Et=new g1(O,Be,xe,pt),$=new _S(O,ye,Be),ct=new IS(O,ye,Be),Be.programs=j.programs,R.capabilities=xe,R.extensions=ye,R.properties=Nt,R.renderLists=ht,R.shadowMap=lt,R.state=pt,R.info=Be}v!==Sn&&(D=new FS(v,e.width,e.height,a,s,r));let it=new od(R,O);this.xr=it,this.getContext=function(){return O},this.getContextAttributes=function(){return O.getContextAttributes()},this.forceContextLoss=function(){let w=ye.get("WEBGL_lose_context");w&&w.loseContext()},this.forceContextRestore=function(){let w=ye.get("WEBGL_lose_context");w&&w.restoreContext()},this.getPixelRatio=function(){return mt},this.setPixelRatio=function(w){w!==void 0&&(mt=w,this.setSize(xt,Ct,!1))},this.getSize=function(w){return w.set(xt,Ct)},this.setSize=function(w,U,q=!0){if(it.isPresenting){It("WebGLRenderer: Can't change size while VR device is presenting.");return}xt=w,Ct=U,e.width=Math.floor(w*mt),e.height=Math.floor(U*mt),q===!0&&(e.style.width=w+"px",e.style.height=U+"px"),D!==null&&D.setSize(e.width,e.height),this.setViewport(0,0,w,U)},this.getDrawingBufferSize=function(w){return w.set(xt*mt,Ct*mt).floor()},this.setDrawingBufferSize=function(w,U,q){xt=w,Ct=U,mt=q,e.width=Math.floor(w*q),e.height=Math.floor(U*q),this.setViewport(0,0,w,U)},this.setEffects=function(w){if(v===Sn){Ft("WebGLRenderer: setEffects() requires outputBufferType set to HalfFloatType or FloatType.");return}if(w){for(let U=0;U<w.length;U++)if(w[U].isOutputPass===!0){It("WebGLRenderer: OutputPass is not needed in setEffects(). Tone mapping and color space conversion are applied automatically.");break}}D.setEffects(w||[])},this.getCurrentViewport=function(w){return w.copy(et)},this.getViewport=function(w){return w.copy(Dt)},this.setViewport=function(w,U,q,z){w.isVector4?Dt.set(w.x,w.y,w.z,w.w):Dt.set(w,U,q,z),pt.viewport(et.copy(Dt).multiplyScalar(On()).round())},this.getScissor=function(w){return w.copy(ne)},this.setScissor=function(w,U,q,z){w.isVector4?ne.set(w.x,w.y,w.z,w.w):ne.set(w,U,q,z),pt.scissor(bt.copy(ne).multiplyScalar(On()).round())},this.getScissorTest=function(){return oe},this.setScissorTest=function(w){pt.setScissorTest(oe=w)},this.setOpaqueSort=function(w){Ot=w},this.setTransparentSort=function(w){Pe=w},this.getClearColor=function(w){return w.copy(L.getClearColor())},this.setClearColor=function(){L.setClearColor(...arguments)},this.getClearAlpha=function(){return L.getClearAlpha()},this.setClearAlpha=function(){L.setClearAlpha(...arguments)},this.clear=function(w=!0,U=!0,q=!0){let z=0;if(w){let H=!1;if(Q!==null){let ft=Q.texture.format;H=_.has(ft)}if(H){let ft=Q.texture.type,Mt=m.has(ft),ut=L.getClearColor(),vt=L.getClearAlpha(),Tt=ut.r,zt=ut.g,Zt=ut.b;Mt?(y[0]=Tt,y[1]=zt,y[2]=Zt,y[3]=vt,O.clearBufferuiv(O.COLOR,0,y)):(M[0]=Tt,M[1]=zt,M[2]=Zt,M[3]=vt,O.clearBufferiv(O.COLOR,0,M))}else z|=O.COLOR_BUFFER_BIT}U&&(z|=O.DEPTH_BUFFER_BIT,this.state.buffers.depth.setMask(!0)),q&&(z|=O.STENCIL_BUFFER_BIT,this.state.buffers.stencil.setMask(4294967295)),z!==0&&O.clear(z)},this.clearColor=function(){this.clear(!0,!1,!1)},this.clearDepth=function(){this.clear(!1,!0,!1)},this.clearStencil=function(){this.clear(!1,!1,!0)},this.setNodesHandler=function(w){w.setRenderer(this),F=w},this.dispose=function(){e.removeEventListener("webglcontextlost",Rt,!1),e.removeEventListener("webglcontextrestored",Gt,!1),e.removeEventListener("webglcontextcreationerror",gt,!1),L.dispose(),ht.dispose(),Y.dispose(),Bt.dispose(),Nt.dispose(),C.dispose(),nt.dispose(),V.dispose(),at.dispose(),Et.dispose(),j.dispose(),it.dispose(),it.removeEventListener("sessionstart",Pd),it.removeEventListener("sessionend",Id),ps.stop()};function Rt(w){w.preventDefault(),Gf("WebGLRenderer: Context Lost."),P=!0}function Gt(){Gf("WebGLRenderer: Context Restored."),P=!1;let w=Be.autoReset,U=lt.enabled,q=lt.autoUpdate,z=lt.needsUpdate,H=lt.type;Wt(),Be.autoReset=w,lt.enabled=U,lt.autoUpdate=q,lt.needsUpdate=z,lt.type=H}function gt(w){Ft("WebGLRenderer: A WebGL context could not be created. Reason: ",w.statusMessage)}function ue(w){let U=w.target;U.removeEventListener("dispose",ue),Ze(U)}function Ze(w){Gi(w),Nt.remove(w)}function Gi(w){let U=Nt.get(w).programs;U!==void 0&&(U.forEach(function(q){j.releaseProgram(q)}),w.isShaderMaterial&&j.releaseShaderCache(w))}this.renderBufferDirect=function(w,U,q,z,H,ft){U===null&&(U=Un);let Mt=H.isMesh&&H.matrixWorld.determinantAffine()<0,ut=L_(w,U,q,z,H);pt.setMaterial(z,Mt);let vt=q.index,Tt=1;if(z.wireframe===!0){if(vt=V.getWireframeAttribute(q),vt===void 0)return;Tt=2}let zt=q.drawRange,Zt=q.attributes.position,St=zt.start*Tt,Jt=(zt.start+zt.count)*Tt;ft!==null&&(St=Math.max(St,ft.start*Tt),Jt=Math.min(Jt,(ft.start+ft.count)*Tt)),vt!==null?(St=Math.max(St,0),Jt=Math.min(Jt,vt.count)):Zt!=null&&(St=Math.max(St,0),Jt=Math.min(Jt,Zt.count));let Ne=Jt-St;if(Ne<0||Ne===1/0)return;at.setup(H,z,ut,q,vt);let ge,pe=$;if(vt!==null&&(ge=S.get(vt),pe=ct,pe.setIndex(ge)),H.isMesh)z.wireframe===!0?(pt.setLineWidth(z.wireframeLinewidth*On()),pe.setMode(O.LINES)):pe.setMode(O.TRIANGLES);else if(H.isLine){let rn=z.linewidth;rn===void 0&&(rn=1),pt.setLineWidth(rn*On()),H.isLineSegments?pe.setMode(O.LINES):H.isLineLoop?pe.setMode(O.LINE_LOOP):pe.setMode(O.LINE_STRIP)}else H.isPoints?pe.setMode(O.POINTS):H.isSprite&&pe.setMode(O.TRIANGLES);if(H.isBatchedMesh)if(ye.get("WEBGL_multi_draw"))pe.renderMultiDraw(H._multiDrawStarts,H._multiDrawCounts,H._multiDrawCount);else{let rn=H._multiDrawStarts,wt=H._multiDrawCounts,fn=H._multiDrawCount,ie=vt?S.get(vt).bytesPerElement:1,ms=Nt.get(z).currentProgram.getUniforms();for(let on=0;on<fn;on++)ms.setValue(O,"_gl_DrawID",on),pe.render(rn[on]/ie,wt[on])}else if(H.isInstancedMesh)pe.renderInstances(St,Ne,H.count);else if(q.isInstancedBufferGeometry){let rn=q._maxInstanceCount!==void 0?q._maxInstanceCount:1/0,wt=Math.min(q.instanceCount,rn);pe.renderInstances(St,Ne,wt)}else pe.render(St,Ne)};function Rd(w,U,q,z){F!==null&&w.isNodeMaterial&&F.setObject(z,w),ke===!0&&J.setState(w,q,!1),w.transparent===!0&&w.side===un&&w.forceSinglePass===!1?(w.side=vn,w.needsUpdate=!0,Qr(w,U,z),w.side=us,w.needsUpdate=!0,Qr(w,U,z),w.side=un):Qr(w,U,z)}this.compile=function(w,U,q=null){q===null&&(q=w),F!==null&&F.renderStart(w,U,q),A=Y.get(q),A.init(U),T.push(A),q.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),w!==q&&w.traverseVisible(function(H){H.isLight&&H.layers.test(U.layers)&&(A.pushLight(H),H.castShadow&&A.pushShadow(H))}),A.setupLights(),F!==null&&F.updateLights(A.state.lightsArray),yn=this.localClippingEnabled,ke=J.init(this.clippingPlanes,yn),ke===!0&&J.setGlobalState(this.clippingPlanes,U),F!==null&&lt.render(A.state.shadowsArray,q,U);let z=new Set;return w.traverse(function(H){if(!(H.isMesh||H.isPoints||H.isLine||H.isSprite))return;let ft=H.material;if(ft)if(Array.isArray(ft))for(let Mt=0;Mt<ft.length;Mt++){let ut=ft[Mt];Rd(ut,q,U,H),z.add(ut)}else Rd(ft,q,U,H),z.add(ft)}),A=T.pop(),F!==null&&F.renderEnd(),z},this.compileAsync=function(w,U,q=null){let z=this.compile(w,U,q);return new Promise(H=>{function ft(){if(z.forEach(function(Mt){let vt=Nt.get(Mt).currentProgram;(vt===void 0||vt.isReady())&&z.delete(Mt)}),z.size===0){H(w);return}setTimeout(ft,10)}ye.get("KHR_parallel_shader_compile")!==null?ft():setTimeout(ft,10)})};let Vu=null;function I_(w){Vu&&Vu(w)}function Pd(){ps.stop()}function Id(){ps.start()}let ps=new m0;ps.setAnimationLoop(I_),typeof self<"u"&&ps.setContext(self),this.setAnimationLoop=function(w){Vu=w,it.setAnimationLoop(w),w===null?ps.stop():ps.start()},it.addEventListener("sessionstart",Pd),it.addEventListener("sessionend",Id),this.render=function(w,U){if(U!==void 0&&U.isCamera!==!0){Ft("WebGLRenderer.render: camera is not an instance of THREE.Camera.");return}if(P===!0)return;F!==null&&F.renderStart(w,U);let q=it.enabled===!0&&it.isPresenting===!0,z=D!==null&&(Q===null||q)&&D.begin(R,Q);if(w.matrixWorldAutoUpdate===!0&&w.updateMatrixWorld(),U.parent===null&&U.matrixWorldAutoUpdate===!0&&U.updateMatrixWorld(),it.enabled===!0&&it.isPresenting===!0&&(D===null||D.isCompositing()===!1)&&(it.cameraAutoUpdate===!0&&it.updateCamera(U),U=it.getCamera()),w.isScene===!0&&w.onBeforeRender(R,w,U,Q),A=Y.get(w,T.length),A.init(U),A.state.textureUnits=Bt.getTextureUnits(),T.push(A),Ae.multiplyMatrices(U.projectionMatrix,U.matrixWorldInverse),U.isArrayCamera?en.setFromArrayCamera(U):Yt.setFromProjectionMatrix(Ae,Wn,U.reversedDepth),yn=this.localClippingEnabled,ke=J.init(this.clippingPlanes,yn),E=ht.get(w,x.length),E.init(),x.push(E),this.info.render.frame++,it.enabled===!0&&it.isPresenting===!0){let Mt=R.xr.getDepthSensingMesh();Mt!==null&&Gu(Mt,U,-1/0,R.sortObjects)}Gu(w,U,0,R.sortObjects),E.finish(),F!==null&&F.updateLights(A.state.lightsArray),R.sortObjects===!0&&E.sort(Ot,Pe),Fn=it.enabled===!1||it.isPresenting===!1||it.hasDepthSensing()===!1,Fn&&L.addToRenderList(E,w),this.info.autoReset===!0&&this.info.reset(),ke===!0&&J.beginShadows();let H=A.state.shadowsArray;if(lt.render(H,w,U),ke===!0&&J.endShadows(),(z&&D.hasRenderPass())===!1){let Mt=E.opaque,ut=E.transmissive;if(A.setupLights(),U.isArrayCamera){let vt=U.cameras;if(ut.length>0)for(let Tt=0,zt=vt.length;Tt<zt;Tt++){let Zt=vt[Tt];Ld(Mt,ut,w,Zt)}Fn&&L.render(w);for(let Tt=0,zt=vt.length;Tt<zt;Tt++){let Zt=vt[Tt];Dd(E,w,Zt,Zt.viewport)}}else ut.length>0&&Ld(Mt,ut,w,U),Fn&&L.render(w),Dd(E,w,U)}Q!==null&&k===0&&(Bt.updateMultisampleRenderTarget(Q),Bt.updateRenderTargetMipmap(Q)),z&&D.end(R),w.isScene===!0&&w.onAfterRender(R,w,U),at.resetDefaultState(),G=-1,tt=null,T.pop(),T.length>0?(A=T[T.length-1],Bt.setTextureUnits(A.state.textureUnits),ke===!0&&J.setGlobalState(R.clippingPlanes,A.state.camera)):A=null,x.pop(),x.length>0?E=x[x.length-1]:E=null,F!==null&&F.renderEnd()};function Gu(w,U,q,z){if(w.visible===!1)return;if(w.layers.test(U.layers)){if(w.isGroup)q=w.renderOrder;else if(w.isLOD)w.autoUpdate===!0&&w.update(U);else if(w.isLight)A.pushLight(w),w.castShadow&&A.pushShadow(w);else if(w.isSprite){let Mt=U.isArrayCamera?en:Yt;if(!w.frustumCulled||w.intersectsFrustum(Mt)){z&&Ye.setFromMatrixPosition(w.matrixWorld).applyMatrix4(Ae);let ut=nt.update(w),vt=w.material;vt.visible&&E.push(w,ut,vt,q,Ye.z,null,U)}}else if(w.isMesh||w.isLine||w.isPoints){let Mt=U.isArrayCamera?en:Yt;if(!w.frustumCulled||w.intersectsFrustum(Mt)){let ut=nt.update(w),vt=w.material;if(z&&(w.boundingSphere!==void 0?(w.boundingSphere===null&&w.computeBoundingSphere(),Ye.copy(w.boundingSphere.center)):(ut.boundingSphere===null&&ut.computeBoundingSphere(),Ye.copy(ut.boundingSphere.center)),Ye.applyMatrix4(w.matrixWorld).applyMatrix4(Ae)),Array.isArray(vt)){let Tt=ut.groups;for(let zt=0,Zt=Tt.length;zt<Zt;zt++){let St=Tt[zt],Jt=vt[St.materialIndex];Jt&&Jt.visible&&E.push(w,ut,Jt,q,Ye.z,St,U)}}else vt.visible&&E.push(w,ut,vt,q,Ye.z,null,U)}}}let ft=w.children;for(let Mt=0,ut=ft.length;Mt<ut;Mt++)Gu(ft[Mt],U,q,z)}function Dd(w,U,q,z){let{opaque:H,transmissive:ft,transparent:Mt}=w;A.setupLightsView(q),ke===!0&&J.setGlobalState(R.clippingPlanes,q),z&&pt.viewport(et.copy(z)),H.length>0&&Na(H,U,q),ft.length>0&&Na(ft,U,q),Mt.length>0&&Na(Mt,U,q),pt.buffers.depth.setTest(!0),pt.buffers.depth.setMask(!0),pt.buffers.color.setMask(!0),pt.setPolygonOffset(!1)}function Ld(w,U,q,z){if((q.isScene===!0?q.overrideMaterial:null)!==null)return;if(A.state.transmissionRenderTarget[z.id]===void 0){let St=ye.has("EXT_color_buffer_half_float")||ye.has("EXT_color_buffer_float");A.state.transmissionRenderTarget[z.id]=new In(1,1,{generateMipmaps:!0,type:St?ii:Sn,minFilter:Oi,samples:Math.max(4,xe.samples),stencilBuffer:r,resolveDepthBuffer:!1,resolveStencilBuffer:!1,storeMultisampledDepthBuffer:!1,storeMultisampledStencilBuffer:!1,colorSpace:Kt.workingColorSpace})}let ft=A.state.transmissionRenderTarget[z.id],Mt=z.viewport||et;ft.setSize(Mt.z*R.transmissionResolutionScale,Mt.w*R.transmissionResolutionScale);let ut=R.getRenderTarget(),vt=R.getActiveCubeFace(),Tt=R.getActiveMipmapLevel();R.setRenderTarget(ft),R.getClearColor(Z),dt=R.getClearAlpha(),dt<1&&R.setClearColor(16777215,.5),R.clear(),Fn&&L.render(q);let zt=R.toneMapping;R.toneMapping=pi;let Zt=z.viewport;if(z.viewport!==void 0&&(z.viewport=void 0),A.setupLightsView(z),ke===!0&&J.setGlobalState(R.clippingPlanes,z),Na(w,q,z),Bt.updateMultisampleRenderTarget(ft),Bt.updateRenderTargetMipmap(ft),ye.has("WEBGL_multisampled_render_to_texture")===!1){let St=!1;for(let Jt=0,Ne=U.length;Jt<Ne;Jt++){let ge=U[Jt],{object:pe,geometry:rn,material:wt,group:fn}=ge;if(wt.side===un&&pe.layers.test(z.layers)){let ie=wt.side;wt.side=vn,wt.needsUpdate=!0,Nd(pe,q,z,rn,wt,fn),wt.side=ie,wt.needsUpdate=!0,St=!0}}St===!0&&(Bt.updateMultisampleRenderTarget(ft),Bt.updateRenderTargetMipmap(ft))}R.setRenderTarget(ut,vt,Tt),R.setClearColor(Z,dt),Zt!==void 0&&(z.viewport=Zt),R.toneMapping=zt}function Na(w,U,q){let z=U.isScene===!0?U.overrideMaterial:null;for(let H=0,ft=w.length;H<ft;H++){let Mt=w[H],{object:ut,geometry:vt,group:Tt}=Mt,zt=Mt.material;zt.allowOverride===!0&&z!==null&&(zt=z),ut.layers.test(q.layers)&&Nd(ut,U,q,vt,zt,Tt)}}function Nd(w,U,q,z,H,ft){F!==null&&H.isNodeMaterial&&F.setObject(w,H),w.onBeforeRender(R,U,q,z,H,ft),w.modelViewMatrix.multiplyMatrices(q.matrixWorldInverse,w.matrixWorld),w.normalMatrix.getNormalMatrix(w.modelViewMatrix),H.onBeforeRender(R,U,q,z,w,ft),H.transparent===!0&&H.side===un&&H.forceSinglePass===!1?(H.side=vn,H.needsUpdate=!0,R.renderBufferDirect(q,U,z,H,w,ft),H.side=us,H.needsUpdate=!0,R.renderBufferDirect(q,U,z,H,w,ft),H.side=un):R.renderBufferDirect(q,U,z,H,w,ft),w.onAfterRender(R,U,q,z,H,ft)}function Ud(w){let U=0;for(let q of w)q.texture!==null&&U++;return U}function Qr(w,U,q){U.isScene!==!0&&(U=Un);let z=Nt.get(w),H=A.state.lights,ft=A.state.shadowsArray,Mt=H.state.version,ut=j.getParameters(w,H.state,ft,U,q,A.state.lightProbeGridArray),vt=j.getProgramCacheKey(ut),Tt=z.programs;z.environment=w.isMeshStandardMaterial||w.isMeshLambertMaterial||w.isMeshPhongMaterial?U.environment:null,z.fog=U.fog;let zt=w.isMeshStandardMaterial||w.isMeshLambertMaterial&&!w.envMap||w.isMeshPhongMaterial&&!w.envMap;z.envMap=C.get(w.envMap||z.environment,zt),z.envMapRotation=z.environment!==null&&w.envMap===null?U.environmentRotation:w.envMapRotation,Tt===void 0&&(w.addEventListener("dispose",ue),Tt=new Map,z.programs=Tt,z.programVariants=new Map);let Zt=Tt.get(vt);if(Zt!==void 0){if(z.currentProgram===Zt&&z.lightsStateVersion===Mt)return Od(w,ut),Zt}else ut.uniforms=j.getUniforms(w),F!==null&&w.isNodeMaterial&&F.build(w,q,ut),w.onBeforeCompile(ut,R),Zt=j.acquireProgram(ut,vt),Tt.set(vt,Zt),z.uniforms=ut.uniforms;let St=z.uniforms;return(!w.isShaderMaterial&&!w.isRawShaderMaterial||w.clipping===!0)&&(St.clippingPlanes=J.uniform),Od(w,ut),z.needsLights=U_(w),z.lightsStateVersion=Mt,z.needsLights&&(St.ambientLightColor.value=H.state.ambient,St.lightProbe.value=H.state.probe,St.sunLights.value=H.state.sun,St.sunLightShadows.value=H.state.sunShadow,St.directionalLights.value=H.state.directional,St.directionalLightShadows.value=H.state.directionalShadow,St.spotLights.value=H.state.spot,St.spotLightShadows.value=H.state.spotShadow,St.rectAreaLights.value=H.state.rectArea,St.ltc_1.value=H.state.rectAreaLTC1,St.ltc_2.value=H.state.rectAreaLTC2,St.pointLights.value=H.state.point,St.pointLightShadows.value=H.state.pointShadow,St.hemisphereLights.value=H.state.hemi,St.sunShadowMatrix.value=H.state.sunShadowMatrix,St.sunShadowCascade.value=H.state.sunShadowCascade,St.directionalShadowMatrix.value=H.state.directionalShadowMatrix,St.spotLightMatrix.value=H.state.spotLightMatrix,St.spotLightMap.value=H.state.spotLightMap,St.pointShadowMatrix.value=H.state.pointShadowMatrix),z.numLightProbeGrids=Ud(A.state.lightProbeGridArray),z.currentProgram=Zt,z.uniformsList=null,Zt}function D_(w,U,q,z,H){let ft=Nt.get(w),Mt=ft.currentProgram.id+","+z+","+H,ut=ft.programVariants.get(Mt);return ut===void 0?(ut=Qr(w,U,q),ft.programVariants.set(Mt,ut)):(ft.currentProgram=ut,ft.uniformsList=null,ft.outputColorSpace=z,ft.toneMapping=H),ut}function Fd(w){if(w.uniformsList===null){let U=w.currentProgram.getUniforms();w.uniformsList=Xr.seqWithValue(U.seq,w.uniforms)}return w.uniformsList}function Od(w,U){let q=Nt.get(w);q.outputColorSpace=U.outputColorSpace,q.batching=U.batching,q.batchingColor=U.batchingColor,q.instancing=U.instancing,q.instancingColor=U.instancingColor,q.instancingMorph=U.instancingMorph,q.skinning=U.skinning,q.morphTargets=U.morphTargets,q.morphNormals=U.morphNormals,q.morphColors=U.morphColors,q.morphTargetsCount=U.morphTargetsCount,q.numClippingPlanes=U.numClippingPlanes,q.numIntersection=U.numClipIntersection,q.vertexAlphas=U.vertexAlphas,q.vertexTangents=U.vertexTangents,q.toneMapping=U.toneMapping}function L_(w,U,q,z,H){U.isScene!==!0&&(U=Un),Bt.resetTextureUnits();let ft=U.fog,Mt=z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial?U.environment:null,ut=Q===null?R.outputColorSpace:Q.isXRRenderTarget===!0?Q.texture.colorSpace:Kt.workingColorSpace,vt=z.isMeshStandardMaterial||z.isMeshLambertMaterial&&!z.envMap||z.isMeshPhongMaterial&&!z.envMap,Tt=C.get(z.envMap||Mt,vt),zt=z.vertexColors===!0&&!!q.attributes.color&&q.attributes.color.itemSize===4,Zt=!!q.attributes.tangent&&(!!z.normalMap||z.anisotropy>0),St=!!q.morphAttributes.position,Jt=!!q.morphAttributes.normal,Ne=!!q.morphAttributes.color,ge=pi;z.toneMapped&&(Q===null||Q.isXRRenderTarget===!0)&&(ge=R.toneMapping);let pe=q.morphAttributes.position||q.morphAttributes.normal||q.morphAttributes.color,rn=pe!==void 0?pe.length:0,wt=Nt.get(z),fn=A.state.lights;if(ke===!0&&(yn===!0||w!==tt)){let Ee=w===tt&&z.id===G;J.setState(z,w,Ee)}let ie=!1,ms=!1;z.version===wt.__version?wt.needsLights&&wt.lightsStateVersion!==fn.state.version||H.isBatchedMesh&&wt.batching===!1||!H.isBatchedMesh&&wt.batching===!0||H.isBatchedMesh&&wt.batchingColor===!0&&H._colorsTexture===null||H.isBatchedMesh&&wt.batchingColor===!1&&H._colorsTexture!==null||H.isInstancedMesh&&wt.instancing===!1||!H.isInstancedMesh&&wt.instancing===!0||H.isSkinnedMesh&&wt.skinning===!1||!H.isSkinnedMesh&&wt.skinning===!0||H.isInstancedMesh&&wt.instancingColor===!0&&H.instanceColor===null||H.isInstancedMesh&&wt.instancingColor===!1&&H.instanceColor!==null||H.isInstancedMesh&&wt.instancingMorph===!0&&H.morphTexture===null||H.isInstancedMesh&&wt.instancingMorph===!1&&H.morphTexture!==null||wt.envMap!==Tt||z.fog===!0&&wt.fog!==ft||wt.numClippingPlanes!==void 0&&(wt.numClippingPlanes!==J.numPlanes||wt.numIntersection!==J.numIntersection)||wt.vertexAlphas!==zt||wt.vertexTangents!==Zt||wt.morphTargets!==St||wt.morphNormals!==Jt||wt.morphColors!==Ne||wt.morphTargetsCount!==rn||wt.numLightProbeGrids!==Ud(A.state.lightProbeGridArray)?ie=!0:(wt.outputColorSpace!==ut||wt.toneMapping!==ge)&&(ms=!0):(ie=!0,wt.__version=z.version);let on=wt.currentProgram;(ie===!0||ms===!0)&&(on=ms===!0?D_(z,U,H,ut,ge):Qr(z,U,H),F&&z.isNodeMaterial&&F.onUpdateProgram(z,on,wt));let Ua=!1,Hi=!1,gs=!1,Qt=on.getUniforms(),nn=wt.uniforms;if(pt.useProgram(on.program)&&(Ua=!0,Hi=!0,gs=!0),z.id!==G&&(G=z.id,Hi=!0),Ua||tt!==w){pt.buffers.depth.getReversed()&&w.reversedDepth!==!0&&(w._reversedDepth=!0,w.updateProjectionMatrix()),Qt.setValue(O,"projectionMatrix",w.projectionMatrix),Qt.setValue(O,"viewMatrix",w.matrixWorldInverse);let Je=Qt.map.cameraPosition;Je!==void 0&&Je.setValue(O,ri.setFromMatrixPosition(w.matrixWorld)),xe.logarithmicDepthBuffer&&Qt.setValue(O,"logDepthBufFC",2/(Math.log(w.far+1)/Math.LN2)),(z.isMeshPhongMaterial||z.isMeshToonMaterial||z.isMeshLambertMaterial||z.isMeshBasicMaterial||z.isMeshStandardMaterial||z.isShaderMaterial)&&Qt.setValue(O,"isOrthographic",w.isOrthographicCamera===!0),tt!==w&&(tt=w,Hi=!0,gs=!0)}if(wt.needsLights&&(fn.state.sunShadowMap.length>0&&Qt.setValue(O,"sunShadowMap",fn.state.sunShadowMap,Bt),fn.state.directionalShadowMap.length>0&&Qt.setValue(O,"directionalShadowMap",fn.state.directionalShadowMap,Bt),fn.state.spotShadowMap.length>0&&Qt.setValue(O,"spotShadowMap",fn.state.spotShadowMap,Bt),fn.state.pointShadowMap.length>0&&Qt.setValue(O,"pointShadowMap",fn.state.pointShadowMap,Bt)),H.isSkinnedMesh){Qt.setOptional(O,H,"bindMatrix"),Qt.setOptional(O,H,"bindMatrixInverse");let Ee=H.skeleton;Ee&&(Ee.boneTexture===null&&Ee.computeBoneTexture(),Qt.setValue(O,"boneTexture",Ee.boneTexture,Bt))}H.isBatchedMesh&&(Qt.setOptional(O,H,"batchingTexture"),Qt.setValue(O,"batchingTexture",H._matricesTexture,Bt),Qt.setOptional(O,H,"batchingIdTexture"),Qt.setValue(O,"batchingIdTexture",H._indirectTexture,Bt),Qt.setOptional(O,H,"batchingColorTexture"),H._colorsTexture!==null&&Qt.setValue(O,"batchingColorTexture",H._colorsTexture,Bt));let $n=q.morphAttributes;if(($n.position!==void 0||$n.normal!==void 0||$n.color!==void 0)&&K.update(H,q,on),(Hi||wt.receiveShadow!==H.receiveShadow)&&(wt.receiveShadow=H.receiveShadow,Qt.setValue(O,"receiveShadow",H.receiveShadow)),(z.isMeshStandardMaterial||z.isMeshLambertMaterial||z.isMeshPhongMaterial)&&z.envMap===null&&U.environment!==null&&(nn.envMapIntensity.value=U.environmentIntensity),nn.dfgLUT!==void 0&&(nn.dfgLUT.value=v1()),Hi){if(Qt.setValue(O,"toneMappingExposure",R.toneMappingExposure),wt.needsLights&&N_(nn,gs),ft&&z.fog===!0&&ot.refreshFogUniforms(nn,ft),ot.refreshMaterialUniforms(nn,z,mt,Ct,A.state.transmissionRenderTarget[w.id]),wt.needsLights&&wt.numLightProbeGrids>0){let Ee=b,Je=0;for(let vi of A.state.lightProbeGridArray)vi.texture!==null&&(Ee.textures[Je]=vi.texture,Ee.min[Je]=vi.boundingBox.min,Ee.max[Je]=vi.boundingBox.max,Ee.resolution[Je]=vi.resolution,Je++);for(let vi in Ee)Ee[vi].length=Je;nn.probesSH.value=Ee.textures,nn.probesMin.value=Ee.min,nn.probesMax.value=Ee.max,nn.probesResolution.value=Ee.resolution}Xr.upload(O,Fd(wt),nn,Bt)}if(z.isShaderMaterial&&z.uniformsNeedUpdate===!0&&(Xr.upload(O,Fd(wt),nn,Bt),z.uniformsNeedUpdate=!1),z.isSpriteMaterial&&Qt.setValue(O,"center",H.center),Qt.setValue(O,"modelViewMatrix",H.modelViewMatrix),Qt.setValue(O,"normalMatrix",H.normalMatrix),Qt.setValue(O,"modelMatrix",H.matrixWorld),z.uniformsGroups!==void 0){let Ee=z.uniformsGroups;for(let Je=0,vi=Ee.length;Je<vi;Je++){let Bd=Ee[Je];Et.update(Bd,on),Et.bind(Bd,on)}}return on}function N_(w,U){w.ambientLightColor.needsUpdate=U,w.lightProbe.needsUpdate=U,w.sunLights.needsUpdate=U,w.sunLightShadows.needsUpdate=U,w.directionalLights.needsUpdate=U,w.directionalLightShadows.needsUpdate=U,w.pointLights.needsUpdate=U,w.pointLightShadows.needsUpdate=U,w.spotLights.needsUpdate=U,w.spotLightShadows.needsUpdate=U,w.rectAreaLights.needsUpdate=U,w.hemisphereLights.needsUpdate=U}function U_(w){return w.isMeshLambertMaterial||w.isMeshToonMaterial||w.isMeshPhongMaterial||w.isMeshStandardMaterial||w.isShadowMaterial||w.isShaderMaterial&&w.lights===!0}this.getActiveCubeFace=function(){return X},this.getActiveMipmapLevel=function(){return k},this.getRenderTarget=function(){return Q},this.setRenderTargetTextures=function(w,U,q){let z=Nt.get(w);z.__autoAllocateDepthBuffer=w.resolveDepthBuffer===!1,z.__autoAllocateDepthBuffer===!1&&(z.__useRenderToTexture=!1),Nt.get(w.texture).__webglTexture=U,Nt.get(w.depthTexture).__webglTexture=z.__autoAllocateDepthBuffer?void 0:q,z.__hasExternalTextures=!0},this.setRenderTargetFramebuffer=function(w,U){let q=Nt.get(w);q.__webglFramebuffer=U,q.__useDefaultFramebuffer=U===void 0},this.setRenderTarget=function(w,U=0,q=0){Q=w,X=U,k=q;let z=null,H=!1,ft=!1;if(w){let ut=Nt.get(w);if(ut.__useDefaultFramebuffer!==void 0){pt.bindFramebuffer(O.FRAMEBUFFER,ut.__webglFramebuffer),et.copy(w.viewport),bt.copy(w.scissor),Lt=w.scissorTest,pt.viewport(et),pt.scissor(bt),pt.setScissorTest(Lt),G=-1;return}else if(ut.__webglFramebuffer===void 0)Bt.setupRenderTarget(w);else if(ut.__hasExternalTextures)Bt.rebindTextures(w,Nt.get(w.texture).__webglTexture,Nt.get(w.depthTexture).__webglTexture);else if(w.depthBuffer){let zt=w.depthTexture;if(ut.__boundDepthTexture!==zt){if(zt!==null&&Nt.has(zt)&&(w.width!==zt.image.width||w.height!==zt.image.height))throw new Error("THREE.WebGLRenderer: Attached DepthTexture is initialized to the incorrect size.");Bt.setupDepthRenderbuffer(w)}}let vt=w.texture;(vt.isData3DTexture||vt.isDataArrayTexture||vt.isCompressedArrayTexture)&&(ft=!0);let Tt=Nt.get(w).__webglFramebuffer;w.isWebGLCubeRenderTarget?(Array.isArray(Tt[U])?z=Tt[U][q]:z=Tt[U],H=!0):w.samples>0&&Bt.useMultisampledRTT(w)===!1?z=Nt.get(w).__webglMultisampledFramebuffer:Array.isArray(Tt)?z=Tt[q]:z=Tt,et.copy(w.viewport),bt.copy(w.scissor),Lt=w.scissorTest}else et.copy(Dt).multiplyScalar(mt).floor(),bt.copy(ne).multiplyScalar(mt).floor(),Lt=oe;if(q!==0&&(z=B),pt.bindFramebuffer(O.FRAMEBUFFER,z)&&pt.drawBuffers(w,z),pt.viewport(et),pt.scissor(bt),pt.setScissorTest(Lt),H){let ut=Nt.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_CUBE_MAP_POSITIVE_X+U,ut.__webglTexture,q)}else if(ft){let ut=U;for(let vt=0;vt<w.textures.length;vt++){let Tt=Nt.get(w.textures[vt]);O.framebufferTextureLayer(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0+vt,Tt.__webglTexture,q,ut)}}else if(w!==null&&q!==0){let ut=Nt.get(w.texture);O.framebufferTexture2D(O.FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,ut.__webglTexture,q)}G=-1};function kd(w){let U=Nt.get(w);return(U.__readFormat!==w.format||U.__readType!==w.type)&&(U.__readFormat=w.format,U.__readType=w.type,U.__formatReadable=xe.textureFormatReadable(w.format),U.__typeReadable=xe.textureTypeReadable(w.type)),U}this.readRenderTargetPixels=function(w,U,q,z,H,ft,Mt,ut=0){if(!(w&&w.isWebGLRenderTarget)){Ft("WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");return}let vt=Nt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Mt!==void 0&&(vt=vt[Mt],Array.isArray(vt)&&(vt=vt[0])),vt){pt.bindFramebuffer(O.FRAMEBUFFER,vt);try{let Tt=w.textures[ut],zt=Tt.format,Zt=Tt.type;w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+ut);let St=kd(Tt);if(St.__formatReadable===!1){Ft("WebGLRenderer.readRenderTargetPixels: renderTarget is not in RGBA or implementation defined format.");return}if(St.__typeReadable===!1){Ft("WebGLRenderer.readRenderTargetPixels: renderTarget is not in UnsignedByteType or implementation defined type.");return}U>=0&&U<=w.width-z&&q>=0&&q<=w.height-H&&O.readPixels(U,q,z,H,st.convert(zt),st.convert(Zt),ft)}finally{let Tt=Q!==null?Nt.get(Q).__webglFramebuffer:null;pt.bindFramebuffer(O.FRAMEBUFFER,Tt)}}},this.readRenderTargetPixelsAsync=async function(w,U,q,z,H,ft,Mt,ut=0){if(!(w&&w.isWebGLRenderTarget))throw new Error("THREE.WebGLRenderer.readRenderTargetPixels: renderTarget is not THREE.WebGLRenderTarget.");let vt=Nt.get(w).__webglFramebuffer;if(w.isWebGLCubeRenderTarget&&Mt!==void 0&&(vt=vt[Mt],Array.isArray(vt)&&(vt=vt[0])),vt)if(U>=0&&U<=w.width-z&&q>=0&&q<=w.height-H){pt.bindFramebuffer(O.FRAMEBUFFER,vt);let Tt=w.textures[ut],zt=Tt.format,Zt=Tt.type;w.textures.length>1&&O.readBuffer(O.COLOR_ATTACHMENT0+ut);let St=kd(Tt);if(St.__formatReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in RGBA or implementation defined format.");if(St.__typeReadable===!1)throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: renderTarget is not in UnsignedByteType or implementation defined type.");let Jt=O.createBuffer();O.bindBuffer(O.PIXEL_PACK_BUFFER,Jt),O.bufferData(O.PIXEL_PACK_BUFFER,ft.byteLength,O.STREAM_READ),O.readPixels(U,q,z,H,st.convert(zt),st.convert(Zt),0),O.bindBuffer(O.PIXEL_PACK_BUFFER,null);let Ne=Q!==null?Nt.get(Q).__webglFramebuffer:null;pt.bindFramebuffer(O.FRAMEBUFFER,Ne);let ge=O.fenceSync(O.SYNC_GPU_COMMANDS_COMPLETE,0);return O.flush(),await Fg(O,ge,4),O.bindBuffer(O.PIXEL_PACK_BUFFER,Jt),O.getBufferSubData(O.PIXEL_PACK_BUFFER,0,ft),O.bindBuffer(O.PIXEL_PACK_BUFFER,null),O.deleteBuffer(Jt),O.deleteSync(ge),ft}else throw new Error("THREE.WebGLRenderer.readRenderTargetPixelsAsync: requested read bounds are out of range.")},this.copyFramebufferToTexture=function(w,U=null,q=0){let z=Math.pow(2,-q),H=Math.floor(w.image.width*z),ft=Math.floor(w.image.height*z),Mt=U!==null?U.x:0,ut=U!==null?U.y:0;Bt.setTexture2D(w,0),O.copyTexSubImage2D(O.TEXTURE_2D,q,0,0,Mt,ut,H,ft),pt.unbindTexture()},this.copyTextureToTexture=function(w,U,q=null,z=null,H=0,ft=0){let Mt,ut,vt,Tt,zt,Zt,St,Jt,Ne,ge=w.isCompressedTexture?w.mipmaps[ft]:w.image;if(q!==null)Mt=q.max.x-q.min.x,ut=q.max.y-q.min.y,vt=q.isBox3?q.max.z-q.min.z:1,Tt=q.min.x,zt=q.min.y,Zt=q.isBox3?q.min.z:0;else{let Qt=Math.pow(2,-H);Mt=Math.floor(ge.width*Qt),ut=Math.floor(ge.height*Qt),w.isDataArrayTexture?vt=ge.depth:w.isData3DTexture?vt=Math.floor(ge.depth*Qt):vt=1,Tt=0,zt=0,Zt=0}z!==null?(St=z.x,Jt=z.y,Ne=z.z):(St=0,Jt=0,Ne=0);let pe=st.convert(U.format),rn=st.convert(U.type),wt;U.isData3DTexture?(Bt.setTexture3D(U,0),wt=O.TEXTURE_3D):U.isDataArrayTexture||U.isCompressedArrayTexture?(Bt.setTexture2DArray(U,0),wt=O.TEXTURE_2D_ARRAY):(Bt.setTexture2D(U,0),wt=O.TEXTURE_2D),pt.activeTexture(O.TEXTURE0),pt.pixelStorei(O.UNPACK_FLIP_Y_WEBGL,U.flipY),pt.pixelStorei(O.UNPACK_PREMULTIPLY_ALPHA_WEBGL,U.premultiplyAlpha),pt.pixelStorei(O.UNPACK_ALIGNMENT,U.unpackAlignment);let fn=pt.getParameter(O.UNPACK_ROW_LENGTH),ie=pt.getParameter(O.UNPACK_IMAGE_HEIGHT),ms=pt.getParameter(O.UNPACK_SKIP_PIXELS),on=pt.getParameter(O.UNPACK_SKIP_ROWS),Ua=pt.getParameter(O.UNPACK_SKIP_IMAGES);pt.pixelStorei(O.UNPACK_ROW_LENGTH,ge.width),pt.pixelStorei(O.UNPACK_IMAGE_HEIGHT,ge.height),pt.pixelStorei(O.UNPACK_SKIP_PIXELS,Tt),pt.pixelStorei(O.UNPACK_SKIP_ROWS,zt),pt.pixelStorei(O.UNPACK_SKIP_IMAGES,Zt);let Hi=w.isDataArrayTexture||w.isData3DTexture,gs=U.isDataArrayTexture||U.isData3DTexture;if(w.isDepthTexture){let Qt=Nt.get(w),nn=Nt.get(U),$n=Nt.get(Qt.__renderTarget),Ee=Nt.get(nn.__renderTarget);pt.bindFramebuffer(O.READ_FRAMEBUFFER,$n.__webglFramebuffer),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,Ee.__webglFramebuffer);for(let Je=0;Je<vt;Je++)Hi&&(O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Nt.get(w).__webglTexture,H,Zt+Je),O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Nt.get(U).__webglTexture,ft,Ne+Je)),O.blitFramebuffer(Tt,zt,Tt+Mt,zt+ut,St,Jt,St+Mt,Jt+ut,O.DEPTH_BUFFER_BIT,O.NEAREST);pt.bindFramebuffer(O.READ_FRAMEBUFFER,null),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else if(H!==0||w.isRenderTargetTexture||Nt.has(w)){let Qt=Nt.get(w),nn=Nt.get(U);pt.bindFramebuffer(O.READ_FRAMEBUFFER,I),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,W);for(let $n=0;$n<vt;$n++)Hi?O.framebufferTextureLayer(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,Qt.__webglTexture,H,Zt+$n):O.framebufferTexture2D(O.READ_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,Qt.__webglTexture,H),gs?O.framebufferTextureLayer(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,nn.__webglTexture,ft,Ne+$n):O.framebufferTexture2D(O.DRAW_FRAMEBUFFER,O.COLOR_ATTACHMENT0,O.TEXTURE_2D,nn.__webglTexture,ft),H!==0?O.blitFramebuffer(Tt,zt,Tt+Mt,zt+ut,St,Jt,St+Mt,Jt+ut,O.COLOR_BUFFER_BIT,O.NEAREST):gs?O.copyTexSubImage3D(wt,ft,St,Jt,Ne+$n,Tt,zt,Mt,ut):O.copyTexSubImage2D(wt,ft,St,Jt,Tt,zt,Mt,ut);pt.bindFramebuffer(O.READ_FRAMEBUFFER,null),pt.bindFramebuffer(O.DRAW_FRAMEBUFFER,null)}else gs?w.isDataTexture||w.isData3DTexture?O.texSubImage3D(wt,ft,St,Jt,Ne,Mt,ut,vt,pe,rn,ge.data):U.isCompressedArrayTexture?O.compressedTexSubImage3D(wt,ft,St,Jt,Ne,Mt,ut,vt,pe,ge.data):O.texSubImage3D(wt,ft,St,Jt,Ne,Mt,ut,vt,pe,rn,ge):w.isDataTexture?O.texSubImage2D(O.TEXTURE_2D,ft,St,Jt,Mt,ut,pe,rn,ge.data):w.isCompressedTexture?O.compressedTexSubImage2D(O.TEXTURE_2D,ft,St,Jt,ge.width,ge.height,pe,ge.data):O.texSubImage2D(O.TEXTURE_2D,ft,St,Jt,Mt,ut,pe,rn,ge);pt.pixelStorei(O.UNPACK_ROW_LENGTH,fn),pt.pixelStorei(O.UNPACK_IMAGE_HEIGHT,ie),pt.pixelStorei(O.UNPACK_SKIP_PIXELS,ms),pt.pixelStorei(O.UNPACK_SKIP_ROWS,on),pt.pixelStorei(O.UNPACK_SKIP_IMAGES,Ua),ft===0&&U.generateMipmaps===!0&&U.mipmapsAutoUpdate===!0&&O.generateMipmap(wt),pt.unbindTexture()},this.initRenderTarget=function(w){Nt.get(w).__webglFramebuffer===void 0&&Bt.setupRenderTarget(w)},this.initTexture=function(w){w.isCubeTexture?Bt.setTextureCube(w,0):w.isData3DTexture?Bt.setTexture3D(w,0):w.isDataArrayTexture||w.isCompressedArrayTexture?Bt.setTexture2DArray(w,0):Bt.setTexture2D(w,0),pt.unbindTexture()},this.resetState=function(){X=0,k=0,Q=null,pt.reset(),at.reset()},typeof __THREE_DEVTOOLS__<"u"&&__THREE_DEVTOOLS__.dispatchEvent(new CustomEvent("observe",{detail:this}))}get coordinateSystem(){return Wn}get outputColorSpace(){return this._outputColorSpace}set outputColorSpace(t){this._outputColorSpace=t;let e=this.getContext();e.drawingBufferColorSpace=Kt._getDrawingBufferColorSpace(t),e.unpackColorSpace=Kt._getUnpackColorSpace()}};function ad(n,t=!1){let e=n[0].index!==null,i=new Set(Object.keys(n[0].attributes)),s=new Set(Object.keys(n[0].morphAttributes)),r={},o={},a=n[0].morphTargetsRelative,l=new he;l.morphTargetsRelative=a;let c=0;for(let u=0;u<n.length;++u){let h=n[u],d=0,f=0;if(e!==(h.index!==null))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". All geometries must have compatible attributes; make sure index attribute exists among all geometries, or in none of them."),null;for(let g in h.attributes){if(!i.has(g))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+'. All geometries must have compatible attributes; make sure "'+g+'" attribute exists among all geometries, or in none of them.'),null;r[g]===void 0&&(r[g]=[]),r[g].push(h.attributes[g]),d++}if(d!==i.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". Make sure all geometries have the same number of attributes."),null;if(a!==h.morphTargetsRelative)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". .morphTargetsRelative must be consistent throughout all geometries."),null;for(let g in h.morphAttributes){if(!s.has(g))return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+".  .morphAttributes must be consistent throughout all geometries."),null;if(h.morphAttributes[g].length!==n[0].morphAttributes[g].length)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+'. All geometries must have the same number of morph targets for the "'+g+'" morph attribute.'),null;o[g]===void 0&&(o[g]=[]),o[g].push(h.morphAttributes[g]),f++}if(f!==s.size)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". Make sure all geometries have the same number of morph attributes."),null;if(t){let g;if(e)g=h.index.count;else if(h.attributes.position!==void 0)g=h.attributes.position.count;else return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed with geometry at index "+u+". The geometry must have either an index or a position attribute"),null;l.addGroup(c,g,u),c+=g}}if(e){let u=0,h=[];for(let d=0;d<n.length;++d){let f=n[d].index;for(let g=0;g<f.count;++g)h.push(f.getX(g)+u);u+=n[d].attributes.position.count}l.setIndex(h)}for(let u in r){let h=A0(r[u]);if(!h)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+u+" attribute."),null;l.setAttribute(u,h)}for(let u in o){let h=o[u][0].length;if(h!==0){l.morphAttributes=l.morphAttributes||{},l.morphAttributes[u]=[];for(let d=0;d<h;++d){let f=[];for(let v=0;v<o[u].length;++v)f.push(o[u][v][d]);let g=A0(f);if(!g)return console.error("THREE.BufferGeometryUtils: .mergeGeometries() failed while trying to merge the "+u+" morphAttribute."),null;l.morphAttributes[u].push(g)}}}return l}function A0(n){let t,e,i,s=-1,r=0;for(let c=0;c<n.length;++c){let u=n[c];if(t===void 0&&(t=u.array.constructor),t!==u.array.constructor)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.array must be of consistent array types across matching attributes."),null;if(e===void 0&&(e=u.itemSize),e!==u.itemSize)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.itemSize must be consistent across matching attributes."),null;if(i===void 0&&(i=u.normalized),i!==u.normalized)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.normalized must be consistent across matching attributes."),null;if(s===-1&&(s=u.gpuType),s!==u.gpuType)return console.error("THREE.BufferGeometryUtils: .mergeAttributes() failed. BufferAttribute.gpuType must be consistent across matching attributes."),null;r+=u.count*e}let o=new t(r),a=new He(o,e,i),l=0;for(let c=0;c<n.length;++c){let u=n[c];if(u.isInterleavedBufferAttribute){let h=l/e;for(let d=0,f=u.count;d<f;d++)for(let g=0;g<e;g++){let v=u.getComponent(d,g);a.setComponent(d+h,g,v)}}else o.set(u.array,l);l+=u.count*e}return s!==void 0&&(a.gpuType=s),a}var Ca=.016,E0=.009,Gs=.013,Ra=.07,C0=12,ld=.3,y1=new N(0,1,0);function R0({seat:n,wheel:t,half:e,knee:i,sole:s}){let r=[],o=[],a=i[0]-.06,l=n-.07,c=-.15,u=e-.14;r.push(new Mn(2*u,a-c,.05).translate(0,(a+c)/2,n-.025)),r.push(new Mn(2*u,.03,ld).translate(0,c,n+ld/2));for(let h of[-1,1]){let d=h*(e-.06),f=h*u;r.push(cd(t-Ca,Ca,d,0,t)),o.push(cd(t-.05,E0,h*(e-E0),0,t));for(let g=0;g<C0;g++){let v=2*Math.PI*g/C0,_=t-Ca;o.push(zi([d,0,t],[d,_*Math.cos(v),t+_*Math.sin(v)],.003))}o.push(zi([f,0,t],[h*e,0,t],.02)),o.push(zi([f,c,l],[f,a,l],Gs)),o.push(zi([f,c,l],[f,c,n+ld],Gs)),o.push(zi([f,0,t],[f,0,l],Gs)),o.push(zi([f,a,l],[h*.1,s[0]+.05,s[1]],Gs)),o.push(zi([f,a-.08,l],[f,a-.1,2*Ra],Gs)),r.push(cd(Ra-Ca,Ca,f,a-.1,Ra)),o.push(zi([f,a-.1,Ra],[f,a-.1,2*Ra],Gs))}return o.push(zi([-u,0,t],[u,0,t],Gs)),r.push(new Mn(.3,.16,.015).translate(0,s[0]+.06,s[1]-.01)),{dark:ad(r),bright:ad(o)}}function cd(n,t,e,i,s){return new la(n,t,6,28).rotateY(Math.PI/2).translate(e,i,s)}function zi(n,t,e){let i=new N(...n),s=new N(...t).sub(i),r=s.length();return new Fi(e,e,r,6,1).translate(0,r/2,0).applyQuaternion(new We().setFromUnitVectors(y1,s.normalize())).translate(i.x,i.y,i.z)}var Cu=9,Ru=9,x1=.505,$r=(n,t)=>n.stature*t,_e=()=>[0,0,0];function P0(n){let t=n.limb,e=(s,r)=>({from:_e(),to:_e(),r0:r,kind:s}),i=s=>({from:_e(),to:_e(),r0:s,kind:"legs"});return{limbs:[{from:_e(),to:_e(),r0:.052,kind:"skin"},e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055),e("cloth",t*.92),e("skin",t*.72),i(.078),i(.055)],balls:[{at:_e(),r:.001,kind:"legs"},{at:_e(),r:t*1.15,kind:"cloth"},{at:_e(),r:t*.86,kind:"cloth"},{at:_e(),r:t*.95,kind:"skin"},{at:_e(),r:.062,kind:"legs"},{at:_e(),r:t*1.15,kind:"cloth"},{at:_e(),r:t*.86,kind:"cloth"},{at:_e(),r:t*.95,kind:"skin"},{at:_e(),r:.062,kind:"legs"}],feet:[{at:_e()},{at:_e()}]}}var Vi={shoulder:_e(),elbow:_e(),hip:_e(),knee:_e(),ankle:_e(),hand:_e(),neck:_e(),chin:_e()};function b1(n,t,e,i,s){let r=e*x1,o=e-r,a=[t[0]-n[0],t[1]-n[1],t[2]-n[2]],l=Math.max(Math.hypot(...a),1e-6),c=Math.min(Math.max(l,Math.abs(r-o)+1e-4),r+o-1e-4),u=(r*r-o*o+c*c)/(2*c),h=Math.sqrt(Math.max(r*r-u*u,0)),d=[a[0]/l,a[1]/l,a[2]/l],f=[.55*i,-.35,-.75],g=f[0]*d[0]+f[1]*d[1]+f[2]*d[2],v=[f[0]-g*d[0],f[1]-g*d[1],f[2]-g*d[2]],_=Math.hypot(...v)||1;for(let m=0;m<3;m++)s[m]=n[m]+d[m]*u+v[m]/_*h}function M1(n,t){return n.chair?[t*$r(n,.057),.7*n.chair.knee[0],n.chair.knee[1]+.12]:[t*(n.halfBreadth+.08),.08,n.shoulder-n.arm*.97]}function I0(n,t,e,i,s){let r=t.entry.body,o=(m,y)=>t.toStage(e,m,y),{angles:a}=e,{limbs:l,balls:c,feet:u}=n;Cs(r,a,[0,0,r.shoulder+.01],Vi.neck),hr(r,a,[0,.02,r.crown-$r(r,.115)],Vi.chin),o(Vi.neck,l[0].from),o(Vi.chin,l[0].to),o([0,0,r.hips],c[0].at),t.stand(i+.05,s);let h=(s.x-e.x)/.05,d=(s.y-e.y)/.05,f=Math.hypot(h,d),g=Math.min(.3,f*.35),v=f>.001?[h/f,d/f,0]:[0,0,0],_=(e.x*v[0]+e.y*v[1])*4.2;As.forEach((m,y)=>{let M=m==="right"?1:-1,b=1+4*y,E=Cs(r,a,[M*r.halfShoulder*.94,0,r.shoulder-r.limb],Vi.shoulder),A=t.entry.props[m]!==void 0,x=A?e.bodyHand[m]:M1(r,M);if(A&&pm(r,a,m,x).forEach((k,Q)=>E[Q]+=k),b1(E,x,r.arm,M,Vi.elbow),o(E,l[b].from),o(Vi.elbow,l[b].to),o(Vi.elbow,l[b+1].from),o(x,l[b+1].to),o(E,c[b].at),o(Vi.elbow,c[b+1].at),o(x,c[b+2].at),r.chair){let k=M*$r(r,.057),{knee:Q,sole:G}=r.chair;o([k,0,r.hips],l[b+2].from),o([k,...Q],l[b+2].to),o([k,...Q],l[b+3].from),o([k,...Q],c[b+3].at),o([k,G[0],G[1]+.08],l[b+3].to),o([k,G[0],G[1]+.08],u[y].at);return}let T=[M*$r(r,.052),0,$r(r,.505)],D=[M*$r(r,.085),-.02,.08];o(T,l[b+2].from);let R=l[b+3].to;o(D,R);let P=Math.sin(_+(y===0?0:Math.PI))*g,F=Math.max(0,Math.cos(_+(y===0?0:Math.PI)))*g*.35;R[0]+=v[0]*P,R[1]+=v[1]*P,R[2]+=F;let B=l[b+2].from,I=_e();t.turn(e,[M*.1,1,0],I);let W=.035+.5*F+.2*Math.abs(P),X=[(B[0]+R[0])/2+I[0]*W,(B[1]+R[1])/2+I[1]*W,(B[2]+R[2])/2+.02];for(let k=0;k<3;k++)l[b+2].to[k]=X[k],l[b+3].from[k]=X[k],c[b+3].at[k]=X[k],u[y].at[k]=R[k]})}var ud=[5210014,10124101,5081716,9724543,9210446,6121376,10116937,7305860];var _i=64;function hd(n,t,e,i,s){for(let o=0;o<24;o++){let a=t(e+(i-e)*o/24),l=t(e+(i-e)*(o+1)/24);s((a[0]+l[0])/2,(a[1]+l[1])/2)&&n.push(new N(a[0],a[1],0),new N(l[0],l[1],0))}}function fd(n,t,e){let i=!1;for(let s=0,r=n.length-1;s<n.length;r=s++){let[o,a]=n[s],[l,c]=n[r];a>e!=c>e&&t<(l-o)*(e-a)/(c-a)+o&&(i=!i)}return i}function D0(){let n=[[0,.47],[.6,.475],[.8,.5],[.82,.535],[.7,.6],[.72,.65],[.88,.72],[.97,.77],[.9,.805],[.6,.825],[.3,.838],[0,.84]],t=new oa(n.map(([e,i])=>new rt(e,i)),11);return t.rotateX(Math.PI/2),t.scale(1,.068,1),t}function L0(){let n=new Ls(1,18),t=n.getAttribute("position").count,e=new Float32Array(t*3);return e.fill(.17,0,3),n.setAttribute("color",new $t(e,3)),n}function Pa(n,t,e){let s=[],r=[];for(let a=0;a<=48;a++){let l=2*Math.PI*a/48;for(let c of[n,t])s.push(c*Math.cos(l),c*Math.sin(l),0);if(a<48&&(e===0||Math.floor(a*e*2/48)%2===0)){let c=2*a;r.push(c,c+1,c+2,c+2,c+1,c+3)}}let o=new he;return o.setAttribute("position",new $t(s,3)),o.setIndex(r),o}function N0(){let n=Pa(.988,1,0),t=Array.from(n.getAttribute("position").array),e=Array.from(n.getIndex().array);for(let s=0;s<4;s++){let r=Math.PI/2*s+Math.PI/4,o=(l,c)=>[l*Math.cos(r+c),l*Math.sin(r+c),0],a=t.length/3;t.push(...o(.93,-.05),...o(1.06,-.05),...o(.994,.14)),e.push(a,a+1,a+2)}let i=new he;return i.setAttribute("position",new $t(t,3)),i.setIndex(e),i}function U0(n){let t=new he,e=[];for(let i=0;i<n;i++)for(let s=0;s<_i-1;s++){let r=(i*_i+s)*2;e.push(r,r+1,r+2,r+2,r+1,r+3)}return t.setIndex(e),t.setAttribute("position",new He(new Float32Array(n*_i*6),3).setUsage(ds)),t.setAttribute("color",new He(new Float32Array(n*_i*6),3).setUsage(ds)),t}function F0(){return new tn({vertexColors:!0,transparent:!0,blending:hs,depthWrite:!1,side:un})}function O0(){return new Ln({vertexShader:`
      varying vec3 shade;
      void main() {
        mat3 turn = mat3(instanceMatrix);
        vec3 sizes = vec3(dot(turn[0], turn[0]), dot(turn[1], turn[1]), dot(turn[2], turn[2])) + 1e-9;
        vec3 n = normalize(turn * (normal / sizes));
        vec3 sky = mix(vec3(0.07, 0.05, 0.03), vec3(0.47, 0.52, 0.58), 0.5 + 0.5 * n.z);
        vec3 front = vec3(0.54, 0.48, 0.40) * max(0.0, dot(n, vec3(-0.315, -0.63, 0.709)));
        shade = instanceColor.rgb * (sky + front) * 1.3;
        gl_Position = projectionMatrix * modelViewMatrix * instanceMatrix * vec4(position, 1.0);
      }`,fragmentShader:`
      varying vec3 shade;
      void main() {
        gl_FragColor = vec4(shade, 1.0);
        #include <colorspace_fragment>
      }`})}function k0(){return new Ln({transparent:!0,depthWrite:!1,blending:hs,uniforms:{scale:{value:720}},vertexShader:`
      attribute float size;
      uniform float scale;
      void main() {
        vec4 at = modelViewMatrix * vec4(position, 1.0);
        gl_Position = projectionMatrix * at;
        gl_PointSize = min(size * scale * projectionMatrix[1][1] * 0.5 / -at.z, 256.0);
        if (size <= 0.0) gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
      }`,fragmentShader:`
      void main() {
        vec2 p = gl_PointCoord - 0.5;
        float r = length(p * vec2(1.15, 1.0 + 0.25 * step(0.0, -p.y))) * 2.0;
        float glow = pow(max(0.0, 1.0 - r), 2.2);
        vec3 fire = mix(vec3(1.0, 0.36, 0.05), vec3(1.0, 0.86, 0.52), glow);
        gl_FragColor = vec4(fire * glow, glow);
      }`})}var I1=new N(0,1,0),Iu=class{constructor(t,e,i){this.doc=e;this.movers=i;let s=document.createElement("canvas").getContext("webgl2");if(!s)throw new Error("no WebGL");let r=s.getExtension("WEBGL_debug_renderer_info"),o=r?String(s.getParameter(r.UNMASKED_RENDERER_WEBGL)):"";s.getExtension("WEBGL_lose_context")?.loseContext(),this.software=/swiftshader|llvmpipe|software/i.test(o);let a=t.getContext("webgl2",{alpha:!1,antialias:!this.software,depth:!0,stencil:!1,powerPreference:"low-power"});if(!a)throw new Error("no WebGL");this.renderer=new Tu({canvas:t,context:a}),this.renderer.setClearColor(790290),this.camera.up.set(0,0,1),this.poses=i.map(()=>Fh()),this.skeletons=i.map(E=>P0(E.entry.body)),i.forEach((E,A)=>As.forEach(x=>{let T=E.entry.props[x];T&&this.props.push({who:A,side:x,prop:T})})),this.scene.add(new ha(14674421,4864556,1.9));let l=new pa(16773597,1.7);l.position.set(-4,-8,9),this.scene.add(l),this.build_place();let c=()=>O0(),u=i.length,h=Math.max(this.props.length,1),d=E=>Math.max(this.props.reduce((A,{prop:x})=>A+E(x),0),1),f=d(E=>E.lines.length),g=d(E=>E.heads.length),v=(E,A,x=c())=>{let T=new $o(E,x,A);return T.instanceMatrix.setUsage(ds),T.frustumCulled=!1,this.scene.add(T),T},_=new Fi(.82,1,1,7,1,!0),m=new ss(1,8,5);this.limbs=v(_,u*Cu),this.balls=v(m,u*Ru),this.torsos=v(D0(),u),this.skulls=v(new ss(1,11,8),u),this.hair=v(new ss(1,10,4,0,Math.PI*2,0,Math.PI*.5).rotateX(Math.PI/2).rotateX(.75),u),this.feet=v(new Mn(.085,.24,.07),u*2),i.forEach((E,A)=>{if(!E.entry.body.chair)return;let{dark:x,bright:T}=R0(E.entry.body.chair);this.chairs.push({who:A,mesh:v(x,1),colour:3752523},{who:A,mesh:v(T,1),colour:10200494})}),this.tethers=v(new Fi(1,1,1,4,1,!0),f,new tn),this.wicks=v(m,g,new tn),this.grips=v(new ss(1,6,4),h,new tn);let y=new tn({transparent:!0,opacity:.07,side:un,depthWrite:!1});this.discs=v(new Ls(1,32),h,y);let M=new tn({transparent:!0,opacity:.75,side:un,depthWrite:!1});this.rings=v(N0(),h,M),this.pools=v(L0(),g,new tn({transparent:!0,blending:hs,depthWrite:!1,vertexColors:!0})),this.alerts=v(Pa(.62,.7,12),u,new tn({color:16739159,side:un,depthWrite:!1,transparent:!0})),this.followed=new Le(Pa(.46,.5,0),new tn({color:16777215,transparent:!0,opacity:.55,depthWrite:!1})),this.scene.add(this.followed,this.ways);let b=new he;b.setAttribute("position",new He(new Float32Array(g*3),3).setUsage(ds)),b.setAttribute("size",new He(new Float32Array(g),1).setUsage(ds)),this.flames=new Yo(b,k0()),this.flames.frustumCulled=!1,this.trails=new Le(U0(d(E=>yl(E).length)),F0()),this.trails.frustumCulled=!1,this.scene.add(this.flames,this.trails),this.paint()}doc;movers;renderer;scene=new Ho;camera=new gn(45,1,.05,300);poses;scratch=Fh();skeletons;limbs;balls;torsos;skulls;hair;feet;chairs=[];tethers;wicks;grips;discs;rings;pools;flames;trails;alerts;followed;ways=new ci;pins=new ci;tint=new Vt;walkShown=-2;props=[];software;size={width:1,height:1,lift:0};resize(t,e,i,s){this.size={width:t,height:e,lift:s},this.renderer.setPixelRatio(i),this.renderer.setSize(t,e,!1),this.camera.aspect=t/Math.max(e,1),this.camera.updateProjectionMatrix(),this.flames.material.uniforms.scale.value=e*i}paint(){let t=new Vt;this.movers.forEach((s,r)=>{let o=ud[r%ud.length],a=l=>l==="skin"?12168352:l==="cloth"?o:3883852;this.skeletons[r].limbs.forEach((l,c)=>this.limbs.setColorAt(r*Cu+c,t.set(a(l.kind)))),this.skeletons[r].balls.forEach((l,c)=>this.balls.setColorAt(r*Ru+c,t.set(a(l.kind)))),this.torsos.setColorAt(r,t.set(o)),this.skulls.setColorAt(r,t.set(12168352)),this.hair.setColorAt(r,t.set(2760988)),this.feet.setColorAt(2*r,t.set(2238253)),this.feet.setColorAt(2*r+1,t.set(2238253))});for(let s of this.chairs)s.mesh.setColorAt(0,t.set(s.colour));let e=0,i=0;this.props.forEach(({side:s,prop:r},o)=>{t.set(s==="left"?5682409:16754224);for(let a of[this.grips,this.discs,this.rings])a.setColorAt(o,t);r.lines.forEach(()=>this.tethers.setColorAt(e++,t)),r.heads.forEach(()=>this.wicks.setColorAt(i++,t))});for(let s=0;s<Math.max(i,1);s++)this.pools.setColorAt(s,t.set(16751164))}place(t){this.movers.forEach((e,i)=>e.at(t,this.poses[i]))}draw(t){let e=new ee,i=new We,s=new N,r=new N,o=new N,a=new ee().makeScale(0,0,0),l=(D,R,P,F,B)=>{s.set(...P),r.set(...F).sub(s);let I=Math.max(r.length(),1e-6);i.setFromUnitVectors(I1,o.copy(r).divideScalar(I)),s.addScaledVector(r,.5),D.setMatrixAt(R,e.compose(s,i,o.set(B,I,B)))},c=new We,u=(D,R,P,F)=>D.setMatrixAt(R,e.compose(s.set(...P),c,o.set(F,F,F))),h=new We,d=new N(0,0,1),f=[0,0,0],g=D=>(e.set(D[0],D[1],D[2],0,D[3],D[4],D[5],0,D[6],D[7],D[8],0,0,0,0,1),i.setFromRotationMatrix(e).premultiply(h));this.movers.forEach((D,R)=>{let P=this.poses[R],F=this.skeletons[R],B=D.entry.body,I=t.shown[R],W=t.hideBody===R;I&&I0(F,D,P,t.beat,this.scratch),F.limbs.forEach((X,k)=>{let Q=R*Cu+k;!I||W&&k===0?this.limbs.setMatrixAt(Q,a):l(this.limbs,Q,X.from,X.to,X.r0)}),F.balls.forEach((X,k)=>{let Q=R*Ru+k;!I||W&&(k===0||k===1||k===5)?this.balls.setMatrixAt(Q,a):u(this.balls,Q,X.at,X.r)}),h.setFromAxisAngle(d,Math.atan2(P.sin,P.cos)+Math.PI),!I||W?(this.torsos.setMatrixAt(R,a),this.skulls.setMatrixAt(R,a),this.hair.setMatrixAt(R,a)):(D.toStage(P,Cs(B,P.angles,[0,0,B.crown-B.stature],f),f),this.torsos.setMatrixAt(R,e.compose(s.set(...f),g(Es(P.angles)),o.set(B.halfShoulder,B.stature,B.stature))),D.toStage(P,hr(B,P.angles,[0,0,B.crown-B.stature*.065],f),f),g(dm(P.angles)),this.skulls.setMatrixAt(R,e.compose(s.set(...f),i,o.set(.077,.095,B.stature*.066))),this.hair.setMatrixAt(R,e.compose(s,i,o.set(.083,.101,B.stature*.0705)))),F.feet.forEach((X,k)=>{I?this.feet.setMatrixAt(2*R+k,e.compose(s.set(X.at[0]- -P.sin*-.05,X.at[1]-P.cos*.05,X.at[2]-.045),h,o.set(1,1,1))):this.feet.setMatrixAt(2*R+k,a)}),I&&t.alert[R]?this.alerts.setMatrixAt(R,e.compose(s.set(P.x,P.y,.012),c,o.set(1,1,1))):this.alerts.setMatrixAt(R,a)});for(let{who:D,mesh:R}of this.chairs){let P=this.poses[D];h.setFromAxisAngle(d,Math.atan2(P.sin,P.cos)+Math.PI),R.setMatrixAt(0,t.shown[D]?e.compose(s.set(P.x,P.y,0),h,o.set(1,1,1)):a),R.instanceMatrix.needsUpdate=!0}let v=this.poses[t.follow];this.followed.visible=v!==void 0&&t.shown[t.follow]&&this.movers.length>1,v&&this.followed.position.set(v.x,v.y,.01);let _=this.flames.geometry.getAttribute("position"),m=this.flames.geometry.getAttribute("size"),y=t.beat,M=0,b=0,E=0,A=0,x=[0,0,0],T=[0,0,0];this.props.forEach(({who:D,side:R,prop:P},F)=>{let B=t.shown[D],I=this.poses[D],W=B&&t.lit[D];if(!B){P.lines.forEach(()=>this.tethers.setMatrixAt(E++,a)),P.heads.forEach(()=>{m.setX(A,0),this.wicks.setMatrixAt(A++,a)}),this.grips.setMatrixAt(F,a);return}for(let[k,Q,G,tt]of P.lines)l(this.tethers,E++,vl(I,R,[k,Q],x),vl(I,R,[G,tt],T),.009);u(this.grips,F,I.hand[R],.034);let X=yl(P).length;if(P.heads.forEach((k,Q)=>{let G=vl(I,R,k,T);u(this.wicks,A,G,P.wick),_.setXYZ(A,G[0],G[1],G[2]+(W?P.flame*.12:0));let tt=1+.05*Math.sin(23*y+5*A)+.03*Math.sin(41*y+A);m.setX(A++,W?(P.wick+P.flame)*1.5*tt:0),W&&Q<X&&this.pools.setMatrixAt(b++,e.compose(s.set(G[0],G[1],.006),c,o.setScalar(.5+.35*G[2])))}),t.planes&&(this.movers.length<=4||D===t.follow)){i.setFromUnitVectors(d,r.set(...I.plane[R])),e.compose(s.set(...I.hand[R]),i,o.setScalar(P.length)),this.discs.setMatrixAt(M,t.hideBody===D?a:e),this.rings.setMatrixAt(M,e);let k=this.tint.set(R==="left"?5682409:16754224);this.discs.setColorAt(M,k),this.rings.setColorAt(M++,k)}}),this.discs.count=this.rings.count=M,this.pools.count=b,this.discs.instanceColor&&(this.discs.instanceColor.needsUpdate=!0),this.rings.instanceColor&&(this.rings.instanceColor.needsUpdate=!0),_.needsUpdate=!0,m.needsUpdate=!0;for(let D of[this.limbs,this.balls,this.torsos,this.skulls,this.hair,this.feet,this.tethers,this.wicks,this.grips,this.discs,this.rings,this.pools,this.alerts])D.instanceMatrix.needsUpdate=!0;for(let D of this.pins.children)D.visible=t.front===null||D.position.y>t.front;this.drawTrails(t),this.drawWays(t),this.renderer.render(this.scene,this.camera)}drawTrails(t){let e=this.trails.geometry,i=e.getAttribute("position"),s=e.getAttribute("color"),r=this.camera.position,o=[0,0,0],a=[0,0,0],l=i.array,c=s.array;if(this.trails.visible=t.trail>0,t.trail<=0)return;let u=0,h=this.props.flatMap(({who:d,side:f,prop:g})=>yl(g).map(v=>({who:d,side:f,spot:v})));for(let{who:d,side:f,spot:g}of h){if(!t.shown[d]){l.fill(0,u,u+_i*6),u+=_i*6;continue}let v=t.lit[d],_=f==="left"?5682409:16754224,m=(_>>16&255)/255,y=(_>>8&255)/255,M=(_&255)/255;for(let b=0;b<_i;b++,u+=6){let E=b/(_i-1);this.movers[d].headAt(t.beat-E*t.trail,f,this.scratch,o,g),b===0&&this.movers[d].headAt(t.beat+t.trail/_i,f,this.scratch,a,g);let A=a[0]-o[0],x=a[1]-o[1],T=a[2]-o[2],D=r.x-o[0],R=r.y-o[1],P=r.z-o[2],F=x*P-T*R,B=T*D-A*P,I=A*R-x*D,W=Math.hypot(F,B,I)||1,X=(v?.04:.026)*(1-.75*E)*(t.hideBody===d?.45:1);F*=X/W,B*=X/W,I*=X/W,l[u]=o[0]+F,l[u+1]=o[1]+B,l[u+2]=o[2]+I,l[u+3]=o[0]-F,l[u+4]=o[1]-B,l[u+5]=o[2]-I;let k=Math.pow(1-E,1.4)*(v?.95:.7),Q=v?Math.pow(1-E,12)*.55:0;for(let G of[u,u+3])c[G]=Math.min(1,m*k+Q),c[G+1]=Math.min(1,y*k+Q*.85),c[G+2]=Math.min(1,M*k+Q*.5);a[0]=o[0],a[1]=o[1],a[2]=o[2]}}i.needsUpdate=!0,s.needsUpdate=!0}drawWays(t){if(t.walk===this.walkShown)return;this.walkShown=t.walk,this.ways.clear();let e=this.doc.standings[t.walk];if(!e)return;let i=new di({color:9148579,transparent:!0,opacity:.8}),s=new tn({color:9148579,transparent:!0,opacity:.6,depthWrite:!1});for(let[r,o,a]of e.spots){let l=new Le(Pa(.24,.28,0),s);l.position.set(o,a,.008),this.ways.add(l);let c=[];for(let u=0;u<=48;u++){let h=e.walk+(e.start-e.walk)*u/48;this.movers[r].stand(h,this.scratch),c.push(new N(this.scratch.x,this.scratch.y,.01))}c[0].distanceTo(c[48])>.05&&this.ways.add(new Ur(new he().setFromPoints(c.slice(0,48)),i))}}build_place(){let t=this.doc.place,e=t.outline.map(([r,o])=>new rt(r,o));if(e.length>2){let r=new is(e);for(let m of t.holes)r.holes.push(new is(m.map(([y,M])=>new rt(y,M))));let o=new Le(new kr(r),new tn({color:1514529}));o.position.z=-.004,this.scene.add(o);for(let m of[t.outline,...t.holes]){let y=[...m,m[0]].map(([M,b])=>new N(M,b,.003));this.scene.add(new ns(new he().setFromPoints(y),new di({color:9148579})))}let a=e.map(m=>m.x),l=e.map(m=>m.y),c=[],[u,h,d,f]=[Math.min(...a),Math.max(...a),Math.min(...l),Math.max(...l)],g=Math.max(1,Math.ceil(Math.max(h-u,f-d)/40)),v=(m,y)=>fd(t.outline,m,y)&&!t.holes.some(M=>fd(M,m,y));for(let m=Math.ceil(u/g)*g;m<=h;m+=g)hd(c,y=>[m,y],d,f,v);for(let m=Math.ceil(d/g)*g;m<=f;m+=g)hd(c,y=>[y,m],u,h,v);this.scene.add(new Ur(new he().setFromPoints(c),new di({color:2765370})));let _=[new N(0,d,.002),new N(0,f,.002)];this.scene.add(new ns(new he().setFromPoints(_),new di({color:4608605})))}for(let r of t.audience)for(let o=1;o<r.line.length;o++){let[a,l]=r.line[o-1],[c,u]=r.line[o],h=new Le(new Mn(Math.hypot(c-a,u-l),.1,.02),new tn({color:14279143}));h.position.set((a+c)/2,(l+u)/2,0),h.rotation.z=Math.atan2(u-l,c-a),this.scene.add(h)}for(let r of t.scenery){let o=new is(r.outline.map(([c,u])=>new rt(c,u))),a=new Le(new kr(o),new Us({color:4866104}));a.position.z=r.height,this.scene.add(a);let l=[...r.outline,r.outline[0]];for(let c=1;c<l.length;c++){let[u,h]=l[c-1],[d,f]=l[c],g=new Le(new Mn(Math.hypot(d-u,f-h),.01,r.height),new Us({color:4866104}));g.position.set((u+d)/2,(h+f)/2,r.height/2),g.rotation.z=Math.atan2(f-h,d-u),this.scene.add(g)}}let i=new di({color:9148579,transparent:!0,opacity:.7});for(let{points:r}of t.lines){let o=r.map(([a,l])=>new N(a,l,.004));o.length>1&&this.scene.add(new ns(new he().setFromPoints(o),i))}let s=(r,o,a,l)=>{let c=new Le(new Fi(.05,.16,l,10),new Us({color:a}));c.rotation.x=Math.PI/2,c.position.set(r,o,l/2),this.pins.add(c)};this.scene.add(this.pins);for(let r of this.doc.crew)s(r.at[0],r.at[1],9425076,1.2);for(let[r,o]of t.extinguishers)s(r,o,13649979,.6);for(let r of t.exits)s(r.at[0],r.at[1],10475775,.25);t.fuel&&s(t.fuel[0],t.fuel[1],14205530,.6)}};var z0={type:"change"},gd={type:"start"},G0={type:"end"},Du=new ts,V0=new Pn,D1=Math.cos(70*bu.DEG2RAD),$e=new N,wn=2*Math.PI,re={NONE:-1,ROTATE:0,DOLLY:1,PAN:2,TOUCH_ROTATE:3,TOUCH_PAN:4,TOUCH_DOLLY_PAN:5,TOUCH_DOLLY_ROTATE:6},md=1e-6,Lu=class extends ma{constructor(t,e=null){super(t,e),this.state=re.NONE,this.target=new N,this.cursor=new N,this.minDistance=0,this.maxDistance=1/0,this.minZoom=0,this.maxZoom=1/0,this.minTargetRadius=0,this.maxTargetRadius=1/0,this.minPolarAngle=0,this.maxPolarAngle=Math.PI,this.minAzimuthAngle=-1/0,this.maxAzimuthAngle=1/0,this.enableDamping=!1,this.dampingFactor=.05,this.enableZoom=!0,this.zoomSpeed=1,this.enableRotate=!0,this.rotateSpeed=1,this.keyRotateSpeed=1,this.enablePan=!0,this.panSpeed=1,this.screenSpacePanning=!0,this.keyPanSpeed=7,this.zoomToCursor=!1,this.autoRotate=!1,this.autoRotateSpeed=2,this.keys={LEFT:"ArrowLeft",UP:"ArrowUp",RIGHT:"ArrowRight",BOTTOM:"ArrowDown"},this.mouseButtons={LEFT:ls.ROTATE,MIDDLE:ls.DOLLY,RIGHT:ls.PAN},this.touches={ONE:cs.ROTATE,TWO:cs.DOLLY_PAN},this.target0=this.target.clone(),this.position0=this.object.position.clone(),this.zoom0=this.object.zoom,this._cursorStyle="auto",this._domElementKeyEvents=null,this._lastPosition=new N,this._lastQuaternion=new We,this._lastTargetPosition=new N,this._quat=new We().setFromUnitVectors(t.up,new N(0,1,0)),this._quatInverse=this._quat.clone().invert(),this._spherical=new zr,this._sphericalDelta=new zr,this._scale=1,this._panOffset=new N,this._rotateStart=new rt,this._rotateEnd=new rt,this._rotateDelta=new rt,this._panStart=new rt,this._panEnd=new rt,this._panDelta=new rt,this._dollyStart=new rt,this._dollyEnd=new rt,this._dollyDelta=new rt,this._dollyDirection=new N,this._mouse=new rt,this._performCursorZoom=!1,this._pointers=[],this._pointerPositions={},this._controlActive=!1,this._onPointerMove=N1.bind(this),this._onPointerDown=L1.bind(this),this._onPointerUp=U1.bind(this),this._onContextMenu=G1.bind(this),this._onMouseWheel=k1.bind(this),this._onKeyDown=B1.bind(this),this._onTouchStart=z1.bind(this),this._onTouchMove=V1.bind(this),this._onMouseDown=F1.bind(this),this._onMouseMove=O1.bind(this),this._interceptControlDown=H1.bind(this),this._interceptControlUp=W1.bind(this),this.domElement!==null&&this.connect(this.domElement),this.update()}set cursorStyle(t){this._cursorStyle=t,t==="grab"?this.domElement.style.cursor="grab":this.domElement.style.cursor="auto"}get cursorStyle(){return this._cursorStyle}connect(t){super.connect(t),this.domElement.addEventListener("pointerdown",this._onPointerDown),this.domElement.addEventListener("pointercancel",this._onPointerUp),this.domElement.addEventListener("contextmenu",this._onContextMenu),this.domElement.addEventListener("wheel",this._onMouseWheel,{passive:!1}),this.domElement.ownerDocument.addEventListener("keydown",this._interceptControlDown,{passive:!0,capture:!0}),this.domElement.style.touchAction="none"}disconnect(){this.state=re.NONE,this.domElement.removeEventListener("pointerdown",this._onPointerDown),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.domElement.removeEventListener("pointercancel",this._onPointerUp),this.domElement.removeEventListener("wheel",this._onMouseWheel),this.domElement.removeEventListener("contextmenu",this._onContextMenu),this.stopListenToKeyEvents(),this.domElement.ownerDocument.removeEventListener("keydown",this._interceptControlDown,{capture:!0}),this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{capture:!0}),this._controlActive=!1,this._pointers.length=0,this._pointerPositions={},this.domElement.style.touchAction="",this.domElement.style.cursor="auto"}dispose(){this.disconnect()}getPolarAngle(){return this._spherical.phi}getAzimuthalAngle(){return this._spherical.theta}getDistance(){return this.object.position.distanceTo(this.target)}listenToKeyEvents(t){t.addEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=t}stopListenToKeyEvents(){this._domElementKeyEvents!==null&&(this._domElementKeyEvents.removeEventListener("keydown",this._onKeyDown),this._domElementKeyEvents=null)}saveState(){this.target0.copy(this.target),this.position0.copy(this.object.position),this.zoom0=this.object.zoom}reset(){this.target.copy(this.target0),this.object.position.copy(this.position0),this.object.zoom=this.zoom0,this.object.updateProjectionMatrix(),this.dispatchEvent(z0),this.update(),this.state=re.NONE}pan(t,e){this._pan(t,e),this.update()}dollyIn(t){this._dollyIn(t),this.update()}dollyOut(t){this._dollyOut(t),this.update()}rotateLeft(t){this._rotateLeft(t),this.update()}rotateUp(t){this._rotateUp(t),this.update()}update(t=null){let e=this.object.position;$e.copy(e).sub(this.target),$e.applyQuaternion(this._quat),this._spherical.setFromVector3($e),this.autoRotate&&this.state===re.NONE&&this._rotateLeft(this._getAutoRotationAngle(t)),this.enableDamping?(this._spherical.theta+=this._sphericalDelta.theta*this.dampingFactor,this._spherical.phi+=this._sphericalDelta.phi*this.dampingFactor):(this._spherical.theta+=this._sphericalDelta.theta,this._spherical.phi+=this._sphericalDelta.phi);let i=this.minAzimuthAngle,s=this.maxAzimuthAngle;isFinite(i)&&isFinite(s)&&(i<-Math.PI?i+=wn:i>Math.PI&&(i-=wn),s<-Math.PI?s+=wn:s>Math.PI&&(s-=wn),i<=s?this._spherical.theta=Math.max(i,Math.min(s,this._spherical.theta)):this._spherical.theta=this._spherical.theta>(i+s)/2?Math.max(i,this._spherical.theta):Math.min(s,this._spherical.theta)),this._spherical.phi=Math.max(this.minPolarAngle,Math.min(this.maxPolarAngle,this._spherical.phi)),this._spherical.makeSafe(),this.enableDamping===!0?this.target.addScaledVector(this._panOffset,this.dampingFactor):this.target.add(this._panOffset),this.target.sub(this.cursor),this.target.clampLength(this.minTargetRadius,this.maxTargetRadius),this.target.add(this.cursor);let r=!1;if(this.zoomToCursor&&this._performCursorZoom||this.object.isOrthographicCamera)this._spherical.radius=this._clampDistance(this._spherical.radius);else{let o=this._spherical.radius;this._spherical.radius=this._clampDistance(this._spherical.radius*this._scale),r=o!=this._spherical.radius}if($e.setFromSpherical(this._spherical),$e.applyQuaternion(this._quatInverse),e.copy(this.target).add($e),this.object.lookAt(this.target),this.enableDamping===!0?(this._sphericalDelta.theta*=1-this.dampingFactor,this._sphericalDelta.phi*=1-this.dampingFactor,this._panOffset.multiplyScalar(1-this.dampingFactor)):(this._sphericalDelta.set(0,0,0),this._panOffset.set(0,0,0)),this.zoomToCursor&&this._performCursorZoom){let o=null;if(this.object.isPerspectiveCamera){let a=$e.length();o=this._clampDistance(a*this._scale);let l=a-o;this.object.position.addScaledVector(this._dollyDirection,l),this.object.updateMatrixWorld(),r=!!l}else if(this.object.isOrthographicCamera){let a=new N(this._mouse.x,this._mouse.y,0);a.unproject(this.object);let l=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),this.object.updateProjectionMatrix(),r=l!==this.object.zoom;let c=new N(this._mouse.x,this._mouse.y,0);c.unproject(this.object),this.object.position.sub(c).add(a),this.object.updateMatrixWorld(),o=$e.length()}else console.warn("WARNING: OrbitControls.js encountered an unknown camera type - zoom to cursor disabled."),this.zoomToCursor=!1;o!==null&&(this.screenSpacePanning?this.target.set(0,0,-1).transformDirection(this.object.matrix).multiplyScalar(o).add(this.object.position):(Du.origin.copy(this.object.position),Du.direction.set(0,0,-1).transformDirection(this.object.matrix),Math.abs(this.object.up.dot(Du.direction))<D1?this.object.lookAt(this.target):(V0.setFromNormalAndCoplanarPoint(this.object.up,this.target),Du.intersectPlane(V0,this.target))))}else if(this.object.isOrthographicCamera){let o=this.object.zoom;this.object.zoom=Math.max(this.minZoom,Math.min(this.maxZoom,this.object.zoom/this._scale)),o!==this.object.zoom&&(this.object.updateProjectionMatrix(),r=!0)}return this._scale=1,this._performCursorZoom=!1,r||this._lastPosition.distanceToSquared(this.object.position)>md||8*(1-this._lastQuaternion.dot(this.object.quaternion))>md||this._lastTargetPosition.distanceToSquared(this.target)>md?(this.dispatchEvent(z0),this._lastPosition.copy(this.object.position),this._lastQuaternion.copy(this.object.quaternion),this._lastTargetPosition.copy(this.target),!0):!1}_getAutoRotationAngle(t){return t!==null?wn/60*this.autoRotateSpeed*t:wn/60/60*this.autoRotateSpeed}_getZoomScale(t){let e=Math.abs(t*.01);return Math.pow(.95,this.zoomSpeed*e)}_rotateLeft(t){this._sphericalDelta.theta-=t}_rotateUp(t){this._sphericalDelta.phi-=t}_panLeft(t,e){$e.setFromMatrixColumn(e,0),$e.multiplyScalar(-t),this._panOffset.add($e)}_panUp(t,e){this.screenSpacePanning===!0?$e.setFromMatrixColumn(e,1):($e.setFromMatrixColumn(e,0),$e.crossVectors(this.object.up,$e)),$e.multiplyScalar(t),this._panOffset.add($e)}_pan(t,e){let i=this.domElement;if(this.object.isPerspectiveCamera){let s=this.object.position;$e.copy(s).sub(this.target);let r=$e.length();r*=Math.tan(this.object.fov/2*Math.PI/180),this._panLeft(2*t*r/i.clientHeight,this.object.matrix),this._panUp(2*e*r/i.clientHeight,this.object.matrix)}else this.object.isOrthographicCamera?(this._panLeft(t*(this.object.right-this.object.left)/this.object.zoom/i.clientWidth,this.object.matrix),this._panUp(e*(this.object.top-this.object.bottom)/this.object.zoom/i.clientHeight,this.object.matrix)):(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - pan disabled."),this.enablePan=!1)}_dollyOut(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale/=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_dollyIn(t){this.object.isPerspectiveCamera||this.object.isOrthographicCamera?this._scale*=t:(console.warn("WARNING: OrbitControls.js encountered an unknown camera type - dolly/zoom disabled."),this.enableZoom=!1)}_updateZoomParameters(t,e){if(!this.zoomToCursor)return;this._performCursorZoom=!0;let i=this.domElement.getBoundingClientRect(),s=t-i.left,r=e-i.top,o=i.width,a=i.height;this._mouse.x=s/o*2-1,this._mouse.y=-(r/a)*2+1,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()}_clampDistance(t){return Math.max(this.minDistance,Math.min(this.maxDistance,t))}_handleMouseDownRotate(t){this._rotateStart.set(t.clientX,t.clientY)}_handleMouseDownDolly(t){this._updateZoomParameters(t.clientX,t.clientY),this._dollyStart.set(t.clientX,t.clientY)}_handleMouseDownPan(t){this._panStart.set(t.clientX,t.clientY)}_handleMouseMoveRotate(t){this._rotateEnd.set(t.clientX,t.clientY),this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(wn*this._rotateDelta.x/e.clientHeight),this._rotateUp(wn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd),this.update()}_handleMouseMoveDolly(t){this._dollyEnd.set(t.clientX,t.clientY),this._dollyDelta.subVectors(this._dollyEnd,this._dollyStart),this._dollyDelta.y>0?this._dollyOut(this._getZoomScale(this._dollyDelta.y)):this._dollyDelta.y<0&&this._dollyIn(this._getZoomScale(this._dollyDelta.y)),this._dollyStart.copy(this._dollyEnd),this.zoomToCursor&&(this._performCursorZoom=!0,this._dollyDirection.set(this._mouse.x,this._mouse.y,1).unproject(this.object).sub(this.object.position).normalize()),this.update()}_handleMouseMovePan(t){this._panEnd.set(t.clientX,t.clientY),this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd),this.update()}_handleMouseWheel(t){this._updateZoomParameters(t.clientX,t.clientY),t.deltaY<0?this._dollyIn(this._getZoomScale(t.deltaY)):t.deltaY>0&&this._dollyOut(this._getZoomScale(t.deltaY)),this.update()}_handleKeyDown(t){let e=!1;switch(t.code){case this.keys.UP:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(wn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,this.keyPanSpeed),e=!0;break;case this.keys.BOTTOM:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateUp(-wn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(0,-this.keyPanSpeed),e=!0;break;case this.keys.LEFT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(wn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(this.keyPanSpeed,0),e=!0;break;case this.keys.RIGHT:t.ctrlKey||t.metaKey||t.shiftKey?this.enableRotate&&this._rotateLeft(-wn*this.keyRotateSpeed/this.domElement.clientHeight):this.enablePan&&this._pan(-this.keyPanSpeed,0),e=!0;break}e&&(t.preventDefault(),this.update())}_handleTouchStartRotate(t){if(this._pointers.length===1)this._rotateStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._rotateStart.set(i,s)}}_handleTouchStartPan(t){if(this._pointers.length===1)this._panStart.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panStart.set(i,s)}}_handleTouchStartDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyStart.set(0,r)}_handleTouchStartDollyPan(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enablePan&&this._handleTouchStartPan(t)}_handleTouchStartDollyRotate(t){this.enableZoom&&this._handleTouchStartDolly(t),this.enableRotate&&this._handleTouchStartRotate(t)}_handleTouchMoveRotate(t){if(this._pointers.length==1)this._rotateEnd.set(t.pageX,t.pageY);else{let i=this._getSecondPointerPosition(t),s=.5*(t.pageX+i.x),r=.5*(t.pageY+i.y);this._rotateEnd.set(s,r)}this._rotateDelta.subVectors(this._rotateEnd,this._rotateStart).multiplyScalar(this.rotateSpeed);let e=this.domElement;this._rotateLeft(wn*this._rotateDelta.x/e.clientHeight),this._rotateUp(wn*this._rotateDelta.y/e.clientHeight),this._rotateStart.copy(this._rotateEnd)}_handleTouchMovePan(t){if(this._pointers.length===1)this._panEnd.set(t.pageX,t.pageY);else{let e=this._getSecondPointerPosition(t),i=.5*(t.pageX+e.x),s=.5*(t.pageY+e.y);this._panEnd.set(i,s)}this._panDelta.subVectors(this._panEnd,this._panStart).multiplyScalar(this.panSpeed),this._pan(this._panDelta.x,this._panDelta.y),this._panStart.copy(this._panEnd)}_handleTouchMoveDolly(t){let e=this._getSecondPointerPosition(t),i=t.pageX-e.x,s=t.pageY-e.y,r=Math.sqrt(i*i+s*s);this._dollyEnd.set(0,r),this._dollyDelta.set(0,Math.pow(this._dollyEnd.y/this._dollyStart.y,this.zoomSpeed)),this._dollyOut(this._dollyDelta.y),this._dollyStart.copy(this._dollyEnd);let o=(t.pageX+e.x)*.5,a=(t.pageY+e.y)*.5;this._updateZoomParameters(o,a)}_handleTouchMoveDollyPan(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enablePan&&this._handleTouchMovePan(t)}_handleTouchMoveDollyRotate(t){this.enableZoom&&this._handleTouchMoveDolly(t),this.enableRotate&&this._handleTouchMoveRotate(t)}_addPointer(t){this._pointers.push(t.pointerId)}_removePointer(t){delete this._pointerPositions[t.pointerId];for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId){this._pointers.splice(e,1);return}}_isTrackingPointer(t){for(let e=0;e<this._pointers.length;e++)if(this._pointers[e]==t.pointerId)return!0;return!1}_trackPointer(t){let e=this._pointerPositions[t.pointerId];e===void 0&&(e=new rt,this._pointerPositions[t.pointerId]=e),e.set(t.pageX,t.pageY)}_getSecondPointerPosition(t){let e=t.pointerId===this._pointers[0]?this._pointers[1]:this._pointers[0];return this._pointerPositions[e]}_customWheelEvent(t){let e=t.deltaMode,i={clientX:t.clientX,clientY:t.clientY,deltaY:t.deltaY};switch(e){case 1:i.deltaY*=16;break;case 2:i.deltaY*=100;break}return t.ctrlKey&&!this._controlActive&&(i.deltaY*=10),i}};function L1(n){this.enabled!==!1&&(this._pointers.length===0&&(this.domElement.setPointerCapture(n.pointerId),this.domElement.ownerDocument.addEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.addEventListener("pointerup",this._onPointerUp)),!this._isTrackingPointer(n)&&(this._addPointer(n),n.pointerType==="touch"?this._onTouchStart(n):this._onMouseDown(n),this._cursorStyle==="grab"&&(this.domElement.style.cursor="grabbing")))}function N1(n){this.enabled!==!1&&(n.pointerType==="touch"?this._onTouchMove(n):this._onMouseMove(n))}function U1(n){switch(this._removePointer(n),this._pointers.length){case 0:this.domElement.releasePointerCapture(n.pointerId),this.domElement.ownerDocument.removeEventListener("pointermove",this._onPointerMove),this.domElement.ownerDocument.removeEventListener("pointerup",this._onPointerUp),this.dispatchEvent(G0),this.state=re.NONE,this._cursorStyle==="grab"&&(this.domElement.style.cursor="grab");break;case 1:let t=this._pointers[0],e=this._pointerPositions[t];this._onTouchStart({pointerId:t,pageX:e.x,pageY:e.y});break}}function F1(n){let t;switch(n.button){case 0:t=this.mouseButtons.LEFT;break;case 1:t=this.mouseButtons.MIDDLE;break;case 2:t=this.mouseButtons.RIGHT;break;default:t=-1}switch(t){case ls.DOLLY:if(this.enableZoom===!1)return;this._handleMouseDownDolly(n),this.state=re.DOLLY;break;case ls.ROTATE:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=re.PAN}else{if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=re.ROTATE}break;case ls.PAN:if(n.ctrlKey||n.metaKey||n.shiftKey){if(this.enableRotate===!1)return;this._handleMouseDownRotate(n),this.state=re.ROTATE}else{if(this.enablePan===!1)return;this._handleMouseDownPan(n),this.state=re.PAN}break;default:this.state=re.NONE}this.state!==re.NONE&&this.dispatchEvent(gd)}function O1(n){switch(this.state){case re.ROTATE:if(this.enableRotate===!1)return;this._handleMouseMoveRotate(n);break;case re.DOLLY:if(this.enableZoom===!1)return;this._handleMouseMoveDolly(n);break;case re.PAN:if(this.enablePan===!1)return;this._handleMouseMovePan(n);break}}function k1(n){this.enabled===!1||this.enableZoom===!1||this.state!==re.NONE||(n.preventDefault(),this.dispatchEvent(gd),this._handleMouseWheel(this._customWheelEvent(n)),this.dispatchEvent(G0))}function B1(n){this.enabled!==!1&&this._handleKeyDown(n)}function z1(n){switch(this._trackPointer(n),this._pointers.length){case 1:switch(this.touches.ONE){case cs.ROTATE:if(this.enableRotate===!1){this.state=re.NONE;break}this._handleTouchStartRotate(n),this.state=re.TOUCH_ROTATE;break;case cs.PAN:if(this.enablePan===!1){this.state=re.NONE;break}this._handleTouchStartPan(n),this.state=re.TOUCH_PAN;break;default:this.state=re.NONE}break;case 2:switch(this.touches.TWO){case cs.DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchStartDollyPan(n),this.state=re.TOUCH_DOLLY_PAN;break;case cs.DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchStartDollyRotate(n),this.state=re.TOUCH_DOLLY_ROTATE;break;default:this.state=re.NONE}break;default:this.state=re.NONE}this.state!==re.NONE&&this.dispatchEvent(gd)}function V1(n){switch(this._trackPointer(n),this.state){case re.TOUCH_ROTATE:if(this.enableRotate===!1)return;this._handleTouchMoveRotate(n),this.update();break;case re.TOUCH_PAN:if(this.enablePan===!1)return;this._handleTouchMovePan(n),this.update();break;case re.TOUCH_DOLLY_PAN:if(this.enableZoom===!1&&this.enablePan===!1)return;this._handleTouchMoveDollyPan(n),this.update();break;case re.TOUCH_DOLLY_ROTATE:if(this.enableZoom===!1&&this.enableRotate===!1)return;this._handleTouchMoveDollyRotate(n),this.update();break;default:this.state=re.NONE}}function G1(n){this.enabled!==!1&&n.preventDefault()}function H1(n){n.key==="Control"&&(this._controlActive=!0,this.domElement.ownerDocument.addEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}function W1(n){n.key==="Control"&&(this._controlActive=!1,this.domElement.ownerDocument.removeEventListener("keyup",this._interceptControlUp,{passive:!0,capture:!0}))}var H0=[{name:"audience",label:"Audience",help:"from the audience"},{name:"behind",label:"Behind",help:"from behind the followed performer, to copy"},{name:"eye",label:"Own eye",help:"through the followed performer's eyes"},{name:"above",label:"Above",help:"plan from above, audience at the bottom"},{name:"free",label:"Free",help:"drag to turn"}],Nu=class{constructor(t,e,i,s){this.camera=t;this.box=i;this.floor=s;this.orbit=new Lu(t,e),this.orbit.enabled=!1,this.orbit.enableDamping=!1,this.orbit.minDistance=.6,this.orbit.maxDistance=80,this.orbit.maxPolarAngle=Math.PI*.495}camera;box;floor;view="audience";zoom=1;look={yaw:0,pitch:0};orbit;a=new N;b=new N;choose(t){if(t==="free"&&this.view!=="free"){let{x0:e,x1:i,y0:s,y1:r}=this.box,o=(2.4+1.05*Math.max(i-e,r-s))*Math.max(1,.9/this.camera.aspect);this.orbit.target.set((e+i)/2,(s+r)/2,.9),this.camera.position.copy(this.orbit.target).add(this.a.set(.45*o,-.85*o,.45*o))}this.view=t,this.zoom=1,this.look={yaw:0,pitch:0},this.orbit.enabled=t==="free"}aim(t,e,i,s){let{camera:r}=this,o=r.aspect;this.view==="eye"?r.clearViewOffset():r.setViewOffset(s.width,s.height,0,s.lift/2,s.width,s.height);let a=1-s.lift/s.height,{x0:l,x1:c,y0:u,y1:h}=this.box,d=(l+c)/2,f=m=>{r.fov!==m&&(r.fov=m,r.updateProjectionMatrix())};r.up.set(0,0,1);let g=(m,y,M,b)=>{let E=[m,y,M];return t.toStage(e,E,E),b.set(...E)};if(this.view==="free"){f(45),this.orbit.update();return}if((i||this.view==="behind"||this.view==="eye")&&(!t||!e))return;let _=m=>Math.tan(m*Math.PI/360);if(this.view==="audience"&&i){f(32);let m=1.42/_(32)/Math.min(a,o*.95)/this.zoom;r.position.copy(this.a.set(e.x,e.y-m,1.55)),r.lookAt(this.b.set(e.x,e.y,1.12))}else if(this.view==="audience"){f(32);let m=(c-l)/2+1.5,y=1.55+.16*(h-u),M=Math.max(m/(_(32)*o),y/_(32)/a)/this.zoom;r.position.copy(this.a.set(d,u-M,1.7+M*.13)),r.lookAt(this.b.set(d,u+.25*(h-u),1.15))}else if(this.view==="behind"){f(45);let m=3.7*Math.max(1,.85/o)/this.zoom;r.position.copy(g(0,-m,1.75+.12*m,this.a)),r.lookAt(g(0,1.2,1.05,this.b))}else if(this.view==="eye"){f(86/Math.sqrt(this.zoom));let m=t.entry.body,[y,M,b]=hr(m,e.angles,[0,.09,m.crown-m.stature*.065],[0,0,0]);r.position.copy(g(y,M,b,this.a));let E=this.look.yaw,A=this.look.pitch-.1;r.lookAt(g(y+Math.sin(E)*Math.cos(A),M+Math.cos(E)*Math.cos(A),b+Math.sin(A),this.b))}else{f(26);let m=this.floor,y=(m.x1-m.x0)/2+.9,M=(m.y1-m.y0)/2+.6,b=Math.max(y/(_(26)*o),M/_(26)/a)/this.zoom,E=i?e.x:(m.x0+m.x1)/2,A=i?e.y:(m.y0+m.y1)/2;r.up.set(0,1,0),r.position.set(E,A,i?Math.min(b,2.1/_(26)/Math.min(a,o)/this.zoom)+1:b+1),r.lookAt(E,A,0)}}};var _d=class{stage=null;eye=null;doc=null;counts=null;movers=[];constructor(){we.drawn.push(t=>this.draw(t))}show(t,e){this.doc=e,this.counts=new xi(e.tempo.times,e.tempo.first,e.tempo.bars,e.tempo.metre);let i=hm(e);this.movers=e.cast.map((r,o)=>new _l(r,i[o])),this.stage=new Iu(t,e,this.movers);let s=X1(e);this.eye=new Nu(this.stage.camera,t,s,s),this.eye.orbit.addEventListener("change",()=>we.touch()),this.resize(t)}resize(t){let e=t.parentElement.getBoundingClientRect();this.stage?.resize(Math.max(1,e.width),Math.max(1,e.height),Math.min(window.devicePixelRatio||1,2),0),we.touch()}look(t){this.eye?.choose(t),we.touch()}leave(){this.stage?.renderer.dispose(),this.stage=this.eye=this.doc=null}draw(t){if(!this.stage||!this.doc||!this.counts||!this.eye)return;let e=this.counts.beatAt(t),i={beat:e,shown:this.doc.cast.map(()=>!0),lit:this.doc.cast.map(s=>s.lit.some(([r,o])=>t>=r&&t<o)),alert:this.doc.cast.map(()=>!1),follow:0,hideBody:-1,trail:1,planes:!0,front:null,walk:-1};this.stage.place(e),this.eye.aim(this.movers[0],this.stage.poses[0],this.doc.cast.length===1,this.stage.size),this.stage.camera.updateMatrixWorld(),this.stage.draw(i)}};function X1(n){let t=n.place.outline.map(([i])=>i),e=n.place.outline.map(([,i])=>i);for(let i of n.standings)for(let[s,r]of i.spots)t.push(s-1,s+1),e.push(r-1,r+1);return t.length?{x0:Math.min(...t),x1:Math.max(...t),y0:Math.min(...e),y1:Math.max(...e)}:{x0:-2,x1:2,y0:-1,y1:2}}var Yr=new _d;function W0(){let n=be(null),[t,e]=At(Pt.value?"The dance is being drawn \u2026":"There is nothing to dance yet."),[i,s]=At(0),[r,o]=At("audience");return ae(()=>{let a=!0,l=dn(()=>{Pt.value?.revision!==void 0&&c()});async function c(){try{let h=await me("dance?flown=0");if(!a)return;s(d=>d+1),setTimeout(()=>{if(!(!a||!n.current)){Yr.leave();try{Yr.show(n.current,h),Yr.look(r),e("")}catch{e("This browser cannot draw in three dimensions; the stage from above shows where everybody stands.")}}})}catch(h){a&&!(h instanceof Ie&&h.status===409)?e(h instanceof Error?h.message:String(h)):a&&!Pt.value&&e("There is nothing to dance yet.")}}let u=new ResizeObserver(()=>n.current&&Yr.resize(n.current));return n.current&&u.observe(n.current.parentElement),()=>{a=!1,l(),u.disconnect(),Yr.leave()}},[]),p(jt,{children:[p("div",{class:"dance",children:[p("canvas",{ref:n,"aria-label":"The performers in motion, as drawn"},i),t&&p("p",{class:"quiet",children:t})]}),p("p",{class:"row",role:"group","aria-label":"Seen from",children:H0.map(a=>p("button",{type:"button","aria-pressed":r===a.name,title:a.help,onClick:()=>{o(a.name),Yr.look(a.name)},children:a.label},a.name))}),p("p",{class:"quiet",children:["Danced as drawn.",Jn.value?"":" \u201Csequencer rehearse\u201D writes the page to rehearse with, as flown."]})]})}var q1={stop:"Stop",warn:"Warn",note:"Note"};function X0(){let n=Yn.value;if(!n)return p("p",{class:"quiet",children:"The checks have not answered yet."});let t=n.revision!==yt.value?.revision;return p("div",{class:t?"findings older":"findings",children:[t&&p("p",{class:"quiet",children:"These are about the show before the last change; it is being looked at again."}),n.open.length>0&&p("p",{class:"quiet",children:["Not looked at yet: ",n.open.join(", "),"."]}),n.drawn.length>0&&p("p",{class:"quiet",children:["So far as drawn, not as flown: ",n.drawn.join(", "),"."]}),n.complete&&!n.entries.length&&p("p",{children:"Nothing stands against it."}),p("ol",{children:n.entries.map((e,i)=>{let s=e.of.map(r=>n.findings[r]).filter(Boolean);return p("li",{id:`entry-${i}`,class:`entry ${e.severity} ${ho.value===i?"pointed":""}`,children:[p("button",{type:"button",class:"told",onClick:()=>$1(s,e.start,i),children:[p("b",{children:q1[e.severity]})," ",e.position&&p("span",{class:"when",children:e.position})," ",e.message]}),p(Y1,{found:s,remedies:e.remedies,old:t})]},`${i} ${e.message}`)})}),n.complete&&n.unseen.length>0&&p("details",{children:[p("summary",{children:"What was not looked at"}),p("ul",{children:n.unseen.map(e=>p("li",{children:e},e))})]}),n.cautions.length>0&&p("details",{children:[p("summary",{children:"Cautions"}),p("ul",{children:n.cautions.map(e=>p("li",{children:e},e))})]})]})}function $1(n,t,e){ho.value=e;let i=fe.value;t===null||!i||(fo(Math.max(0,t)),tr({beat:Math.floor(i.beatAt(t)+1e-6),who:n[0]?.who.length?n[0].who:[]}),setTimeout(()=>document.querySelector(".count.on")?.scrollIntoView({block:"center"})))}function Y1({found:n,remedies:t,old:e}){let i=n.flatMap(c=>c.mends),s=i.filter((c,u)=>i.findIndex(h=>h.words===c.words&&JSON.stringify(h.lines)===JSON.stringify(c.lines))===u),r=new Set(s.map(c=>c.words)),o=t.filter(c=>!r.has(c)),[a,l]=At(null);return p(jt,{children:[s.length>0&&p("p",{class:"mends",children:s.map(c=>p("button",{type:"button","aria-pressed":a===c,onClick:()=>l(a===c?null:c),children:c.words},c.words))}),a&&p("div",{class:"preview",children:[p("p",{children:"This changes in the file:"}),p("pre",{children:a.lines.map(c=>[...c.out.map(u=>`\u2212 ${u.trim()}`),...c.in.map(u=>`+ ${u.trim()}`)].join(`
`)).join(`
\u2026
`)}),p("button",{type:"button",class:"main",disabled:e,onClick:()=>{l(null),qt(a.operation,`Mended: ${a.words}.`)},children:"Do it"})]}),o.length>0&&p("ul",{class:"remedies",children:o.map(c=>p("li",{children:c},c))})]})}var qn=null;function Tn(n){if(n?.$ref)return{...Tn(qn.$defs[n.$ref.split("/").pop()]),...n,$ref:void 0};let t=n?.anyOf?.filter(e=>e.type!=="null");if(t?.length===1)return{...Tn(t[0]),description:n.description??Tn(t[0]).description,default:n.default};if(t?.length>1){let e=t.map(Tn).find(i=>i.properties);if(e)return{...e,description:n.description??e.description,orWord:!0}}return n??{}}var q0={audience:"audience edge",ceilings:"ceiling",scenery:"piece of scenery",exits:"exit",extinguishers:"extinguisher"},Z1=[["venue","Place"],["fire","Fire"],["limits","Limits"],["wishes","Wishes for drafts"],["rules","Rules"],["weather","Weather"],["stop_call","Stop call"],["emergency","Emergency"],["drift","Errors to expect"]];function Z0(){let[n,t]=At(qn!==null);ae(()=>{n||me("schema").then(s=>{qn=s,t(!0)})},[]);let e=yt.value?.values;if(!n||!e)return p("p",{class:"quiet",children:e===null?"The file cannot be read: mend it under Text.":"The forms are being made \u2026"});let i={properties:Object.fromEntries(["title","version","date","night","begins"].map(s=>[s,qn.properties[s]]))};return p("div",{class:"forms",children:[p("details",{open:!0,children:[p("summary",{children:"Show"}),p(Jr,{of:i,values:e,change:s=>({do:"change-titles",values:s}),path:"show"})]}),p("details",{children:[p("summary",{children:"Song"}),p(K1,{values:e})]}),p("details",{children:[p("summary",{children:"Cast"}),p($0,{group:"cast",kind:"Performer",values:e})]}),p("details",{children:[p("summary",{children:"Crew"}),p($0,{group:"crew",kind:"CrewMember",values:e})]}),Z1.map(([s,r])=>p("details",{children:[p("summary",{children:r}),p("p",{class:"quiet",children:qn.properties[s]?.description}),p(Jr,{of:Tn(qn.properties[s]),values:e[s]??{},change:o=>({do:"change-heading",heading:s,values:o}),path:s,without:[...Object.keys(q0),"lit"]}),s==="venue"&&Object.entries(q0).map(([o,a])=>p(Y0,{into:o,word:a,values:e.venue?.[o]??[]},o)),s==="fire"&&e.fire&&p(Y0,{into:"lit",word:"time in which somebody is lit",values:e.fire.lit??[]})]},s))]})}function $0({group:n,kind:t,values:e}){let i=e[n]??[],[s,r]=At(""),o=()=>{let l=i[i.length-1]??{},c=u=>{let h=Object.values(Pt.value?.formations[u]?.spots??{}),d=h.length?Math.max(...h.map(g=>g[0])):-2,f=h.length?h[h.length-1][1]:3;return{at:[Math.round((d+2)*20)/20,f]}};if(n==="cast"){let u=Object.entries(e.formations??{}).filter(([,h])=>h?.spots).map(([h])=>h);qt({do:"add-performer",performer:{name:s,stature:Uu(l.stature??"1.7 m"),prop:Ia(l.prop??"poi")},spots:Object.fromEntries(u.map(h=>[h,c(h)]))},`${s} is in the cast.`)}else qt({do:"add-crew",member:{name:s,post:[-6,2],duty:"spotter"}},`${s} is in the crew.`);r("")},a=qn.$defs[t];return p(jt,{children:[i.map(l=>p("details",{class:"inner",children:[p("summary",{children:l.name}),p(J1,{group:n,name:l.name}),p(Jr,{of:a,values:l,without:["name"],change:c=>({do:"change-person",group:n,name:l.name,values:c}),path:`${n} ${l.name}`}),p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{qt({do:"remove-person",group:n,name:l.name},`${l.name} is taken out.`)},children:["Take ",l.name," out"]})})]},l.name)),p("form",{class:"row",onSubmit:l=>{l.preventDefault(),s.trim()&&o()},children:[p("label",{children:["A new ",n==="cast"?"performer":"member of the crew"," ",p("input",{type:"text",value:s,placeholder:"name",onInput:l=>r(l.currentTarget.value)})]}),p("button",{type:"submit",disabled:!s.trim(),children:"Add"})]})]})}function J1({group:n,name:t}){let[e,i]=At(t);return p("form",{class:"row",onSubmit:s=>{s.preventDefault(),qt({do:"rename-person",group:n,name:t,new:e},`Now called ${e}.`)},children:[p("label",{children:["Name ",p("input",{type:"text",value:e,onInput:s=>i(s.currentTarget.value)})]}),p("button",{type:"submit",disabled:!e.trim()||e===t,children:"Rename everywhere"})]})}function K1({values:n}){let t=Tn(qn.properties.track),e=Tn(t.properties?.corrections??{}),i=n.track?.corrections?.sections??[],[s,r]=At(""),[o,a]=At("");return p(jt,{children:[p(gh,{}),p("p",{class:"quiet",children:[n.track?.file,": put right here what was heard wrongly."]}),p(Jr,{of:e,values:n.track?.corrections??{},without:["sections"],change:l=>({do:"correct-count",values:l}),path:"count"}),i.map((l,c)=>p("p",{class:"row",children:[p("span",{children:["From ",l.from,": ",l.name]}),p("button",{type:"button",class:"small",onClick:()=>{qt({do:"delete-section",number:c},"The section goes on from the one before.")},children:"Take out"})]},`${l.from}${l.name}`)),p("form",{class:"row",onSubmit:l=>{l.preventDefault(),qt({do:"put-section",start:o,name:s,before:j1(i,o)},`${s} from ${o}.`),r(""),a("")},children:[p("label",{children:["A section ",p("input",{type:"text",value:s,placeholder:"verse",onInput:l=>r(l.currentTarget.value)})]}),p("label",{children:["from bar.beat ",p("input",{type:"text",value:o,placeholder:"9.1",onInput:l=>a(l.currentTarget.value)})]}),p("button",{type:"submit",disabled:!s||!o,children:"Add"})]})]})}function j1(n,t){let e=s=>Number.parseFloat(s),i=n.findIndex(s=>e(String(s.from))>e(t));return i<0?null:i}function Y0({into:n,word:t,values:e}){let i=Tn(Tn(n==="lit"?qn.properties.fire:qn.properties.venue).properties[n].items??Q1(n).items),s=Array.isArray(e)?e:[],r={audience:{name:`edge ${s.length+1}`,line:[[-6,-3],[6,-3]]},ceilings:null,scenery:null,exits:{name:`exit ${s.length+1}`,at:[-6,-4],width:"1.2 m"},extinguishers:{at:[-5,2],rating:"2-A:10-B:C",kind:"foam"},lit:{who:"all",from:"1.1",until:"2.1"}};return p(jt,{children:[s.map((o,a)=>p("details",{class:"inner",children:[p("summary",{children:[o.name??`${t} ${a+1}`,n==="lit"?`: ${[o.who].flat().join(", ")}, ${o.from} to ${o.until}`:""]}),p(Jr,{of:i,values:o,change:l=>({do:"change-item",into:n,number:a,values:l}),path:`${n} ${a}`}),p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{qt({do:"delete-item",into:n,number:a},"Taken out.")},children:"Take it out"})})]},a)),r[n]&&p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{qt({do:"put-item",into:n,item:r[n]},"Added.")},children:["Add ",/^[aeiou]/.test(t)?"an":"a"," ",t]})})]})}var Q1=n=>Tn(Tn(n==="lit"?qn.properties.fire:qn.properties.venue).properties[n]);function Jr({of:n,values:t,change:e,put:i,path:s,without:r=[]}){let o=Object.entries(n?.properties??{}).filter(([v])=>!r.includes(v)),a=t&&typeof t=="object"?t:{},l=o.filter(([v])=>a[v]!==void 0),c=o.filter(([v])=>a[v]===void 0),[u,h]=At([]),d=[...l,...c.filter(([v])=>u.includes(v))],f=c.filter(([v])=>!u.includes(v)),g=i??((v,_)=>qt(e({[v]:_}),`${Zr(v)} ${_===null?"left out":"changed"}.`));return p("div",{class:"fields",children:[d.map(([v,_])=>p(tT,{name:v,of:Tn(_),value:a[v],set:m=>g(v,m),id:`${s} ${v}`.replaceAll(/\W+/g,"-")},v)),f.length>0&&p("label",{class:"more",children:["Say more ",p("select",{value:"",onChange:v=>{h([...u,v.currentTarget.value]),v.currentTarget.value=""},children:[p("option",{value:""}),f.map(([v])=>p("option",{value:v,children:Zr(v)},v))]})]})]})}var Zr=n=>n.replaceAll("_"," ");function tT({name:n,of:t,value:e,set:i,id:s}){let r=e===void 0?"":typeof e=="string"||typeof e=="number"?String(e):JSON.stringify(Ia(e)),[o,a]=At(r);if(ae(()=>a(r),[r]),t.properties&&e&&typeof e=="object"&&!Array.isArray(e))return p("fieldset",{children:[p("legend",{children:Zr(n)}),p(eT,{of:t,value:e,set:i,path:s})]});let l=t.enum??(t.type==="boolean"?["true","false"]:null),c=`${s}-why`;return p("div",{class:"field",children:[p("label",{for:s,children:Zr(n)}),l?p("select",{id:s,"aria-describedby":c,value:r||String(t.default??""),onChange:u=>{i(Uu(u.currentTarget.value))},children:[!r&&p("option",{value:""}),l.map(u=>p("option",{value:String(u),children:String(u)},String(u)))]}):p("input",{id:s,type:"text","aria-describedby":c,list:n==="who"?"cast-names":void 0,value:o,placeholder:t.examples?.[0]??(t.default!==void 0&&t.default!==null?String(t.default):""),onInput:u=>a(u.currentTarget.value),onChange:async()=>{o!==r&&!await i(o.trim()?nT(o):null)&&a(r)}}),e!==void 0&&p("button",{type:"button",class:"small",title:`Leave ${Zr(n)} out`,"aria-label":`Leave ${Zr(n)} out`,onClick:()=>{i(null)},children:"\xD7"}),p("small",{id:c,children:t.description})]})}function eT({of:n,value:t,set:e,path:i}){return p(Jr,{of:n,values:t,path:i,put:(r,o)=>{let{[r]:a,...l}=Ia(t);return e(o===null?l:{...l,[r]:o})}})}function nT(n){if(/^[[{]/.test(n.trim()))try{return JSON.parse(n)}catch{return n}return Uu(n.trim())}function Uu(n){return typeof n!="string"?n:n==="true"||n==="false"?n==="true":/^-?\d+(\.\d+)?$/.test(n)&&String(Number(n))===n?Number(n):n}function Ia(n){return Array.isArray(n)?n.map(Ia):n&&typeof n=="object"?Object.fromEntries(Object.entries(n).map(([t,e])=>[t,Ia(e)])):Uu(n)}var J0=()=>p("datalist",{id:"cast-names",children:["all",...Se.value].map(n=>p("option",{value:n},n))});var iT=4,K0=-1;function sT(n){let t=new Map;for(let e of n){if(e.entry?.[0]!=="timeline")continue;let i=t.get(e.who)??t.set(e.who,[]).get(e.who),s=Number(e.entry[1]),r=i.find(o=>o.entry===s);r?Object.assign(r,{start:Math.min(r.start,e.start),end:Math.max(r.end,e.end)}):i.push({entry:s,start:e.start,end:e.end,newEnd:0,gap:iT})}for(let e of t.values())for(let i of e)i.newEnd=i.end;return t}function j0(n,t,e){let i=sT(n);for(let[l,c]of e){let u=i.get(l)??i.set(l,[]).get(l);if("beat"in t)u.push({entry:K0,start:t.beat,end:t.beat,newEnd:c,gap:0});else for(let h of u)h.entry===t.entry&&(h.newEnd=c)}for(let l of i.values())l.sort((c,u)=>c.start-u.start||c.entry-u.entry);let s="entry"in t?t.entry:K0,r=new Map;for(let l of i.values())for(let c of l)r.set(c.entry,Math.min(r.get(c.entry)??1/0,c.start));let o=r.get(s)??1/0,a=new Map;for(let l of[...r.keys()].sort((c,u)=>r.get(c)-r.get(u))){if(l===s||r.get(l)<o-1e-6)continue;let c=-1/0,u=!1,h=!1;for(let d of i.values()){let f=d.findIndex(m=>m.entry===l);if(f<1)continue;let g=d[f-1],v=d[f].start-g.end,_=g.newEnd+Math.min(v,g.gap)-d[f].start;c=Math.max(c,_),u||=_>1e-6,h||=g.newEnd<g.end-1e-6&&v<=g.gap+1e-6}if(u||h&&c<-1e-6){a.set(l,c);for(let d of i.values())for(let f of d)f.entry===l&&(f.newEnd=f.end+c)}}return a}function Q0(n,t,e,i,s){return[...t].sort((r,o)=>r[0]-o[0]).flatMap(([r,o])=>{let a=n[r]??{},l={};if("from"in a&&(l.from=i(e(r)+o)),"until"in a){let c=s(String(a.until));c!==null&&(l.until=i(c+o))}return Object.keys(l).length?[{do:"change-block",at:["timeline",r],values:l}]:[]})}var rT=900,e_=new WeakMap,t_=new Map;function oT(n){for(let t=n.parentElement;t;t=t.parentElement)if(t!==document.body&&/auto|scroll/.test(getComputedStyle(t).overflowY))return t;return null}function aT(n){let t=t_.get(n);return t||(t=new IntersectionObserver(e=>e.forEach(i=>e_.get(i.target)?.(i.isIntersecting)),{root:n,rootMargin:`${rT}px 0px`}),t_.set(n,t)),t}function n_({on:n,must:t,tall:e,children:i}){let s=be(null),[r,o]=At(!1),[a,l]=At(!1),c=be(null);if(ae(()=>{let h=s.current;if(!n||!h)return;let d=aT(oT(h)),f=()=>l(!0),g=()=>l(!1);return e_.set(h,v=>{!v&&h.firstElementChild&&(c.current=h.getBoundingClientRect().height),o(v)}),d.observe(h),addEventListener("beforeprint",f),addEventListener("afterprint",g),()=>{d.unobserve(h),removeEventListener("beforeprint",f),removeEventListener("afterprint",g)}},[n]),!n)return p(jt,{children:i()});let u=r||t||a;return p("div",{ref:s,style:u?void 0:{height:c.current!==null?`${c.current}px`:`${e}rem`},children:u&&i()})}var Fu=48;function yd(){let n=Pt.value,t=fe.value;if(!n||!t)return[];let e=n.blocks.map(s=>s.start),i=n.blocks.map(s=>s.end);return wp(t,n.sections,Math.min(0,...e),Math.max(t.beatAt(n.duration),...i))}var i_=sn(yd),s_=sn(()=>{let n=fe.value?.beatAt(pn.value)??0;return i_.value.find(t=>n>=t.start&&n<t.start+t.beats)?.start??null}),lT=600,cT=2.9;function r_({only:n}){let t=i_.value,e=n??Se.value,i=t.length*e.length>lT,s=Math.max(1,...t.map(r=>r.beats));return p("div",{class:Ka.value?"sheet":"sheet older",role:"group","aria-label":"The song in eights; arrow keys walk over the counts",onKeyDown:r=>ST(r,t),children:t.map((r,o)=>p(uT,{row:r,wide:s,first:o===0,who:e,many:i},r.start))})}function uT({many:n,...t}){let{row:e,first:i,who:s}=t,o=n&&(i||(a=>a!=null&&a>=e.start&&a<e.start+e.beats)(Fe.value?.beat)||s_.value===e.start);return p(n_,{on:n,must:o,tall:3+cT*s.length,children:()=>p(hT,{...t})})}function hT({row:n,wide:t,first:e,who:i}){let s=ah(n,i,Qs.value),r=fe.value,o=e?Fe.value:null;return p("div",{class:"part-row",children:[n.heads&&n.section&&p("h2",{class:"part",children:[n.section.name," ",p("small",{children:["bar ",n.bar,fT(n.section)]})]}),p("div",{class:"eight",children:[p("button",{class:"bar",type:"button",tabIndex:-1,title:"Go there in the song",onClick:()=>fo(r.secondsAt(n.start)),children:n.bar}),p("div",{class:"lines",style:{width:`${100*n.beats/t}%`},children:[p("div",{class:"counts","aria-hidden":"true",children:o_(n).map(a=>p("i",{children:a+1},a))}),s.map(a=>p(dT,{line:a,row:n,named:s.length>1||a.who.length<Se.value.length,entry:e&&o===null},a.who.join())),p(_T,{row:n}),p("div",{class:"strip",children:[p(vT,{row:n}),p(tm,{row:n,seconds:[r.secondsAt(n.start),r.secondsAt(n.start+n.beats)]})]}),p(xT,{row:n})]}),p(bT,{row:n})]})]})}function fT(n){let t=Pt.value.sections.map(i=>i.energy).sort((i,s)=>i-s),e=t.indexOf(n.energy)/Math.max(1,t.length-1);return t.length<3?"":e<=.25?", calm":e>=.75?", full":""}var o_=n=>[...Array(Math.max(1,Math.round(n.beats))).keys()],Ou=(n,t)=>`${100*(Math.min(Math.max(t,n.start),n.start+n.beats)-n.start)/n.beats}%`,xd=(n,t,e)=>({left:Ou(n,t),width:`calc(${Ou(n,e)} - ${Ou(n,t)})`});function dT({line:n,row:t,named:e,entry:i}){return p("div",{class:"line",children:[e&&p("span",{class:"who",children:$s(n.who,Se.value)}),p("div",{class:"bars",children:[o_(t).map(s=>p(pT,{beat:t.start+s,line:n,row:t,entry:i&&s===0},s)),Ap(n.blocks).map(s=>p("span",{class:"gap","aria-hidden":"true",style:xd(t,s.start,s.end)},s.start)),n.blocks.map(s=>p(gT,{block:s,line:n,row:t},`${s.kind} ${s.start}`))]})]})}function pT({beat:n,line:t,row:e,entry:i}){let s=be(null),r=Fe.value,o=r!==null&&r.beat===n&&r.who.some(l=>t.who.includes(l));ae(()=>{o&&Ks.value&&s.current?.focus()},[o]);let a=lh(t.blocks,n);return p("button",{ref:s,type:"button",class:o?"count on":"count",tabIndex:o||i?0:-1,"aria-current":o?"location":void 0,"aria-label":`Bar ${e.bar}, count ${Math.round(n-e.start)+1}, ${$s(t.who,Se.value)}: ${a?mT(a):"nothing"}`,onClick:()=>a_({beat:n,who:t.who})})}function a_(n){if(Jn.value)return vd(n);Ks.value=!1,tr(n),Bn.value=!0}function vd(n){tr(n),fo(fe.value.secondsAt(n.beat))}function mT(n){return n.kind==="link"?"a link":n.phrase?`${n.title}, of the phrase ${n.phrase}`:n.title}function gT({block:n,line:t,row:e}){let i=n.start>=e.start-1e-6,s=n.end<=e.start+e.beats+1e-6,r=Fe.value,o=r!==null&&n.path!==null&&r.who.some(c=>t.who.includes(c))&&r.beat>=n.start-1e-6&&r.beat<n.end-1e-6,a=["block",n.path===null?"between":"written",n.kind,i?"begins":"",s?"ends":"",o?"chosen":""].join(" "),l=n.kind!=="link"&&(n.path!==null||n.end-n.start>1.5);return p("div",{class:a,"aria-hidden":"true",style:xd(e,n.start,n.end),title:[n.title,...n.words].join(`
`),onClick:c=>{let u=c.currentTarget.parentElement.getBoundingClientRect(),h=e.start+Math.floor((c.clientX-u.left)/u.width*e.beats);a_({beat:h,who:t.who})},children:[l&&p("span",{children:i?n.title:`\u2026 ${n.title}`}),i&&l&&n.phrase&&p("small",{children:n.phrase})]})}function _T({row:n}){let t=new Map;for(let e of Pt.value?.walks??[]){if(e.end<=n.start||e.start>=n.start+n.beats||e.length<.05)continue;let i=`${e.start} ${e.end}`,s=t.get(i);s?s.who.push(e.who):t.set(i,{start:e.start,end:e.end,who:[e.who]})}return t.size?p("div",{class:"walks",children:[...t.values()].map(e=>p("span",{style:xd(n,e.start,e.end),children:[$s(e.who,Se.value)," ",e.who.length>1||e.who.length===Se.value.length&&Se.value.length>1?"walk":"walks"]},e.start))}):null}function vT({row:n}){let t=qi.value?.loudness,e=fe.value,i=yT.value;if(!t||!e||!i.length)return null;let s=[...Array(Fu).keys()].map(r=>{let o=Math.floor(e.secondsAt(n.start+r/Fu*n.beats)/t.step),a=Math.ceil(e.secondsAt(n.start+(r+1)/Fu*n.beats)/t.step),l=Math.max(0,...i.slice(Math.max(o,0),Math.max(a,0)));return`M${r+.5} 10V${(10-9.6*l).toFixed(2)}`});return p("svg",{class:"loudness",viewBox:`0 0 ${Fu} 10`,preserveAspectRatio:"none","aria-hidden":"true",children:p("path",{d:s.join("")})})}var yT=sn(()=>{let n=qi.value?.loudness.db??[],t=[...n.keys()].sort((i,s)=>n[i]-n[s]),e=new Array(n.length);return t.forEach((i,s)=>e[i]=(s+1)/n.length),e});function xT({row:n}){if(s_.value!==n.start)return null;let e=fe.value.beatAt(pn.value);return p("b",{class:"head",style:{left:Ou(n,e)},"aria-hidden":"true"})}function bT({row:n}){let t=fe.value,e=(Yn.value?.entries??[]).flatMap((s,r)=>{if(s.severity==="note"||s.start===null)return[];let o=t.beatAt(s.start);return o>=n.start&&o<n.start+n.beats?[{entry:s,k:r}]:[]}),i=Yn.value?.revision!==Pt.value?.revision;return p("div",{class:i?"margin older":"margin",children:e.map(({entry:s,k:r})=>p(MT,{entry:s,k:r},r))})}function MT({entry:n,k:t}){return p("button",{type:"button",class:`remark ${n.severity}`,onClick:()=>{le.value="findings",ho.value=t,setTimeout(()=>document.getElementById(`entry-${t}`)?.scrollIntoView({block:"nearest"}))},children:[p("b",{children:n.severity==="stop"?"Stop":"Warn"})," ",n.message]})}function bd(){let n=Fe.value;return n?n.who.flatMap(t=>{let e=lh(Qs.value.get(t)??[],n.beat);return e&&e.path!==null?[e]:[]}):[]}function ST(n,t){if(!n.target.classList.contains("count"))return;let e=n.ctrlKey||n.metaKey,i=bd(),r=(Jn.value?e?{}:{Enter:()=>vd(Fe.value)," ":()=>vd(Fe.value)}:e?{c:()=>mo(i),x:()=>il(i),v:()=>sl(o=>xn(fe.value,o),Da)}:{Delete:()=>ku(i),Backspace:()=>ku(i),Enter:()=>Bn.value=!0," ":()=>Bn.value=!0})[n.key];if(r&&Fe.value){n.preventDefault(),r();return}!e&&!n.altKey&&wT(n.key,t)&&n.preventDefault()}async function ku(n){let t=nl(n).map(e=>e.path);t.length&&await qt(dh(t),`Deleted: ${n[0].title}.`)}function Da(n){let e=(Pt.value?.blocks??[]).filter(r=>r.entry?.[0]==="timeline"&&r.start>n+1e-6).map(r=>Number(r.entry[1])).filter(Number.isFinite);if(!e.length)return null;let i=Math.min(...e),s=(yt.value?.values?.timeline??[])[i];return s&&("from"in s||"accent"in s)?i:null}function wT(n,t){let e={ArrowLeft:[-1,0],ArrowRight:[1,0],ArrowUp:[0,-1],ArrowDown:[0,1]};if(!t.length||!(n in e||["Home","End","PageUp","PageDown"].includes(n)))return!1;let i=Fe.value??{beat:t[0].start,who:Se.value},s=Math.max(0,t.findIndex(d=>i.beat>=d.start&&i.beat<d.start+d.beats)),r=d=>ah(d,Se.value,Qs.value),o=d=>d.start+Math.max(1,Math.round(d.beats))-1,a=t[s],l=i.beat,c=Math.max(0,r(a).findIndex(d=>d.who.includes(i.who[0]))),[u,h]=e[n]??[0,0];if(u)l=Math.min(Math.max(l+u,t[0].start),o(t[t.length-1])),a=t.find(d=>l>=d.start&&l<d.start+d.beats)??a,c=Math.max(0,r(a).findIndex(d=>d.who.includes(i.who[0])));else if(h){if(c+=h,c<0||c>=r(a).length){let d=t[s+h];if(!d)return!0;l=Math.min(d.start+(l-a.start),o(d)),a=d,c=h>0?0:r(a).length-1}}else if(n==="Home")l=a.start;else if(n==="End")l=o(a);else{let d=t.filter(f=>f.heads);a=(n==="PageDown"?d.find(f=>f.start>i.beat):[...d].reverse().find(f=>f.start<t[s].start))??a,l=a.start,c=0}return Ks.value=!0,tr({beat:l,who:r(a)[c].who}),!0}function f_(){let n=Fe.value,t=fe.value,e=be(null),i=bd(),s=()=>e.current?.querySelector("form input, .steps button")?.focus({preventScroll:!0});if(ae(()=>{Bn.value&&s()},[Bn.value,n?.beat,n?.who.join()]),ae(()=>{Bn.value&&document.activeElement===document.body&&s()},[i[0]?.path?.join()]),!n||!t||!Bn.value)return null;let r=i[0],o=yd().find(a=>n.beat>=a.start-1e-6&&n.beat<a.start+a.beats-1e-6);return p("section",{ref:e,class:"place","aria-label":"What is danced here",onKeyDown:a=>{a.key==="Escape"&&l_()},children:[p("header",{children:[p("p",{children:[o?`Bar ${o.bar}, count ${Math.floor(n.beat-o.start+1e-6)+1} (${xn(t,n.beat)}) \xB7 `:"",$s(r?[...new Set(i.map(a=>a.who))]:n.who,Se.value)]}),p("button",{type:"button",class:"small",onClick:l_,title:"Close (Escape)",children:"Close"})]}),r?p(ET,{block:r,blocks:i},r.path.join("/")):p(TT,{beat:n.beat,who:n.who},`${n.beat} ${n.who.join()}`)]})}function l_(){Bn.value=!1,Ks.value=!0,document.querySelector(".count.on")?.focus()}function TT({beat:n,who:t}){let e=fe.value,[i,s]=At(""),[r,o]=At(AT(n,t)),[a,l]=At(t),[c,u]=At([]),h=()=>{let d={who:c_(a),from:xn(e,n),pattern:i,beats:r},f=c.find(v=>v.name===i)?.shift;f&&(d.shift=f);let g=Sd({beat:n},new Map(a.map(v=>[v,n+r])));qt([...g,{do:"put-block",into:["timeline"],block:d,before:Da(n)}],`Put: ${i}.`)};return p("form",{onSubmit:d=>{d.preventDefault(),i&&h()},children:[p(m_,{label:"Put a move",value:i,choose:s,who:a,at:n,near:c,found:u}),p(DT,{label:"For",unit:"beats",value:r,least:1,step:1,set:o}),Se.value.length>1&&p("fieldset",{children:[p("legend",{children:"Danced by"}),Se.value.map(d=>p("label",{children:[p("input",{type:"checkbox",checked:a.includes(d),onChange:f=>l(Se.value.filter(g=>g===d?f.currentTarget.checked:a.includes(g)))})," ",d]},d))]}),p(d_,{}),p("p",{class:"row",children:[p("button",{type:"submit",class:"main",disabled:!i||!a.length,children:"Put it here"}),p("button",{type:"button",disabled:!a.length,onClick:()=>{qt({do:"put-block",into:["timeline"],before:Da(n),block:{who:c_(a),from:xn(e,n),rest:r}},"Put: a rest.")},children:"Rest here"}),p(Np,{beat:n}),js.value&&p("button",{type:"button",onClick:()=>{sl(d=>xn(e,d),Da)},children:["Paste ",js.value.words]})]})]})}var c_=n=>n.length===Se.value.length&&n.length>1?"all":n.length===1?n[0]:n;function AT(n,t){let e=(Pt.value?.blocks??[]).filter(i=>t.includes(i.who)&&i.path!==null&&i.start>n+1e-6).map(i=>i.start);return Math.max(1,Math.min(8,Math.floor(Math.min(...e,1/0)-n)))}function ET({block:n,blocks:t}){let e=fe.value,i=n.entry??n.path,s=n.path[0]==="phrases",[r,o]=At(!0),a=p_(n),l=s?a.length:1,c=wd(n.path)??{},u=n.end-n.start,h=Number(c.repeat??1)||1,d=(m,y,M=[])=>{let b=s&&r&&l>1?{do:"change-here",use:[i],rounds:[h_(n,a)],operation:m}:m;qt(M.length?[...M,b]:b,y)},f=n.path,g=m=>{let y=m-u,M=s&&r&&h_(n,a)===null?y:s?y*CT(i,n):y;d({do:"stretch-block",at:f,beats:m/h},`${n.title}: ${m} beats.`,Sd({entry:Number(i[1])},u_(i,M)))},v=async m=>{let y=xn(e,RT(i,n)+m),M=Fe.value,b=Sd({entry:Number(i[1])},u_(i,m)),E={do:"move-block",at:i,start:y};await qt(b.length?[...b,E]:E,`Moved to ${y}.`)&&(Fe.value={...M,beat:M.beat+m})},_=Number(n.shift??0);return p(jt,{children:[p("h3",{children:n.title}),p("ul",{class:"words",children:n.words.filter(m=>m!==n.title).map(m=>p("li",{children:m},m))}),s&&p("fieldset",{children:[p("legend",{children:["The phrase ",n.phrase," is danced ",l===1?"once":`${l} times`,". Change it"]}),l>1&&p("label",{children:[p("input",{type:"radio",name:"where",checked:r,onChange:()=>o(!0)})," here only"]}),p("label",{children:[p("input",{type:"radio",name:"where",checked:!r||l<2,onChange:()=>o(!1)})," ",l>1?"everywhere":"in the phrase"]})]}),"pattern"in c&&p(PT,{block:n,change:d,at:f}),p("div",{class:"steps",children:[p("p",{children:["Starts ",n.position,p("button",{type:"button",onClick:()=>{v(-1)},title:s?"The whole entry moves":"A beat earlier",children:"1 beat earlier"}),p("button",{type:"button",onClick:()=>{v(1)},children:"1 beat later"})]}),p("p",{children:["Lasts ",Md(u),p("button",{type:"button",disabled:u<=1,onClick:()=>g(u-1),children:"1 beat shorter"}),p("button",{type:"button",onClick:()=>g(u+1),children:"1 beat longer"})]}),p(d_,{}),"pattern"in c&&p("p",{children:["Begins ",_?`${Md(_)} in`:"at its start",p("button",{type:"button",onClick:()=>d({do:"change-block",at:f,values:{shift:_-.5||null}},"Shifted."),children:"\xBD beat back"}),p("button",{type:"button",onClick:()=>d({do:"change-block",at:f,values:{shift:_+.5||null}},"Shifted."),children:"\xBD beat on"})]})]}),p("p",{class:"row",children:[p("button",{type:"button",onClick:()=>{mo(t)},children:"Copy"}),p("button",{type:"button",onClick:()=>{il(t)},children:"Cut"}),p("button",{type:"button",onClick:()=>{ku(t)},children:s?"Delete the entry":"Delete"})]}),p(IT,{entry:i})]})}var Md=n=>`${Math.round(n*1e3)/1e3} ${Math.abs(n-1)<1e-6?"beat":"beats"}`;function wd(n){let t=yt.value?.values;for(let e of n)t=t?.[e];return t&&typeof t=="object"?t:null}function d_(){return p("label",{class:"along",children:[p("input",{type:"checkbox",checked:Ja.value,onChange:n=>Ja.value=n.currentTarget.checked})," What follows moves along, up to the next gap"]})}function Sd(n,t){let e=fe.value,i=Pt.value?.blocks;if(!Ja.value||!e||!i)return[];let s=new Map;for(let r of i){if(r.entry?.[0]!=="timeline")continue;let o=Number(r.entry[1]);s.set(o,Math.min(s.get(o)??1/0,r.start))}return Q0(yt.value?.values?.timeline??[],j0(i,n,t),r=>s.get(r),r=>xn(e,r),r=>Tp(e,r))}function u_(n,t){let e=new Map,i=n.join("/");for(let s of Pt.value?.blocks??[])s.entry?.join("/")===i&&e.set(s.who,Math.max(e.get(s.who)??-1/0,s.end+t));return e}function CT(n,t){let e=n.join("/");return p_(t).filter(i=>i.entry?.join("/")===e).length}function RT(n,t){let e=n.join("/"),i=(Pt.value?.blocks??[]).filter(s=>s.who===t.who&&s.entry?.join("/")===e&&s.kind!=="link");return Math.min(t.start,...i.map(s=>s.start))}function p_(n){let t=n.path.join("/");return(Pt.value?.blocks??[]).filter(e=>e.who===n.who&&e.path?.join("/")===t).sort((e,i)=>e.start-i.start)}function h_(n,t){let e=n.entry?.join("/");return Number(wd(n.entry??[])?.repeat??1)>1?t.filter(s=>s.entry?.join("/")===e).indexOf(n):null}function PT({block:n,change:t,at:e}){let[i,s]=At(""),[r,o]=At([]);return p("form",{class:"row",onSubmit:a=>{a.preventDefault(),i&&t({do:"change-block",at:e,values:{pattern:i}},`Now ${i}.`)},children:[p(m_,{label:"Dance another move",value:i,choose:s,who:[n.who],at:n.start,near:r,found:o}),p("button",{type:"submit",disabled:!i,children:"Change"})]})}function IT({entry:n}){let t=wd(n);if(!t||n[0]!=="timeline"||Se.value.length<2)return null;let e=t.who==="all"||t.who===void 0?Se.value:Array.isArray(t.who)?t.who:[t.who],i=t.mirror===void 0?[]:Array.isArray(t.mirror)?t.mirror:[t.mirror],s=t.canon?Number(t.canon):0;return e.length<2?null:p("fieldset",{children:[p("legend",{children:"Together"}),p("p",{children:[s?`a canon, ${Md(s)} apart`:"all at once",p("button",{type:"button",onClick:()=>{qt({do:"set-canon",at:n,beats:s+1},"Canon.")},children:s?"1 beat farther apart":"A canon"}),s>0&&p("button",{type:"button",onClick:()=>{qt({do:"set-unison",at:[n]},"All at once.")},children:"All at once"})]}),p("p",{children:["Mirrored: ",e.map(r=>p("label",{children:[p("input",{type:"checkbox",checked:i.includes(r)||i.includes("all"),onChange:o=>{qt({do:"set-mirror",at:n,who:e.filter(a=>a===r?o.currentTarget.checked:i.includes(a)||i.includes("all"))},"Mirrored.")}})," ",r]},r))]})]})}function DT({label:n,unit:t,value:e,least:i,step:s,set:r}){return p("label",{class:"stepper",children:[n," ",p("input",{type:"number",min:i,step:s,value:e,onInput:o=>{let a=Number(o.currentTarget.value);a>=i&&r(a)}})," ",t]})}function m_({label:n,value:t,choose:e,who:i,at:s,near:r,found:o}){let[a,l]=At(-1),[c,u]=At(!1),h=i.join();ae(()=>{let _=!0;if(h)return me(`patterns?who=${encodeURIComponent(h)}&at=${s}`).then(m=>_&&o(m.patterns),()=>{}),()=>{_=!1}},[h,s,yt.value?.revision]);let d=r.length?r:Js.value,f=t.toLowerCase().split(/[\s-]+/).filter(Boolean),g=d.filter(_=>f.every(m=>_.name.includes(m))).slice(0,60),v=c&&!(g.length===1&&g[0].name===t);return p("div",{class:"pattern-field",children:[p("label",{children:[n,p("input",{type:"text",role:"combobox","aria-expanded":v,"aria-controls":"patterns","aria-autocomplete":"list","aria-activedescendant":v&&a>=0?`pattern-${a}`:void 0,autocomplete:"off",spellcheck:!1,value:t,placeholder:"its name, or part of it",onClick:()=>u(!0),onBlur:()=>setTimeout(()=>u(!1),150),onInput:_=>{e(_.currentTarget.value),u(!0),l(-1)},onKeyDown:_=>{_.key==="ArrowDown"||_.key==="ArrowUp"?(_.preventDefault(),u(!0),l((a+(_.key==="ArrowDown"?1:g.length-1)+(a<0&&_.key==="ArrowUp"?1:0))%Math.max(1,g.length))):_.key==="Enter"&&v&&g.length&&(a>=0||g.length===1)?(_.preventDefault(),e(g[Math.max(a,0)].name),u(!1)):_.key==="Escape"&&v&&(_.stopPropagation(),u(!1))}})]}),v&&p("ul",{id:"patterns",role:"listbox","aria-label":"Moves",children:[g.map((_,m)=>p("li",{id:`pattern-${m}`,role:"option","aria-selected":m===a,class:m===a?"on":"",onMouseDown:y=>{y.preventDefault(),e(_.name),u(!1)},children:[p("span",{children:_.name})," ",p("small",{children:_.suits?_.words:"not for these props"})]},_.name)),!g.length&&p("li",{class:"none",role:"option","aria-selected":!1,"aria-disabled":"true",children:"no move has that name"})]})]})}var LT=[["page","Rehearsal page","the show danced, with the song, in one file for any browser"],["counts","Count track","the song with counts and calls, as WAV"],["midi","Cues for light and sound","MIDI"],["captions","Captions","WebVTT, for a video of the rehearsal"],["timetable","Timetable","every change with its time, as CSV and JSON"]],g_=[100,85,70,50];function __(){let n=nr.value;return yt.value?.readable?n?.state==="working"?p(NT,{now:n}):p("div",{class:"printing",children:[n?.state==="failed"&&p("p",{class:"fault",role:"alert",children:n.error?.message}),n?.state==="done"&&n.made&&p(UT,{now:n}),p(kT,{}),p(BT,{}),p("p",{class:"quiet",children:["What is printed is the show as it stands on this page, saved or not. The files are put into ",n?.folder??"the folder exports beside the show","."]})]}):p("p",{class:"quiet",children:"The file cannot be read as a show: mend it under Text, then it can be printed."})}function NT({now:n}){return p("div",{class:"printing",children:[p("h3",{children:n.asked?.what==="rehearsal"?"Making what you rehearse with":"Printing the sheets"}),p(go,{now:n}),p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{mn("print/stop")},children:"Give it up"})}),p("p",{class:"quiet",children:"You can go on planning meanwhile: what you change now is not in these files."})]})}function UT({now:n}){let{files:t,ok:e,said:i,older:s}=n.made;return p("section",{class:"made","aria-label":"What was made",children:[p("h3",{children:"Ready"}),e===!1&&p("p",{class:"fault",children:["Do not dance this yet: ",p("button",{type:"button",class:"small",onClick:()=>le.value="findings",children:"Findings"})," says why, and so does every sheet."]}),e===null&&p("p",{class:"caution",children:"Nothing was checked for these: Findings says whether the show can be danced."}),s&&p("p",{class:"caution",children:"The show has been changed since: what was made is of before."}),n.unsaved&&p("p",{class:"quiet",children:"Made from the show as it stood on this page; it was not saved then."}),p("ul",{children:t.map(r=>p("li",{children:[FT(r)?p("a",{href:r.address,target:"_blank",rel:"noopener",children:r.name}):p("span",{children:r.name}),p("small",{children:OT(r.bytes)}),p("a",{class:"save",href:`${r.address}?save`,download:r.name,"aria-label":`Download ${r.name}`,children:"Download"})]},r.name))}),i.map(r=>p("p",{class:"quiet",children:sr(r)},r)),p("p",{class:"quiet",children:["They lie in ",n.folder,"."]})]})}var FT=n=>/\.(pdf|html|wav)$/.test(n.name),OT=n=>n<1e6?`${Math.max(1,Math.round(n/1e3))} kB`:`${(n/1e6).toFixed(1)} MB`;function kT(){let[n,t]=At([]),[e,i]=At("pack"),[s,r]=At([]),[o,a]=At([]),[l,c]=At("a4"),[u,h]=At("");ae(()=>{me("printable").then(g=>t(g.kinds),()=>{})},[]);let d=e==="some"&&!s.length&&!o.length,f=()=>{mn("sheets",{everything:e==="all",only:e==="some"?s:[],people:e==="some"?o:[],paper:l,since:u.trim()||null})};return p("form",{class:"printed",onSubmit:g=>{g.preventDefault(),d||f()},children:[p("h3",{children:"Sheets to print"}),p("fieldset",{children:[p("legend",{children:"Which"}),p("label",{children:[p("input",{type:"radio",name:"which",checked:e==="pack",onChange:()=>i("pack")})," what is carried on the night"]}),p("label",{children:[p("input",{type:"radio",name:"which",checked:e==="all",onChange:()=>i("all")})," everything"]}),p("label",{children:[p("input",{type:"radio",name:"which",checked:e==="some",onChange:()=>i("some")})," what I choose"]})]}),e==="some"&&p(jt,{children:[p("fieldset",{class:"kinds",children:[p("legend",{children:"Kinds (none: every kind)"}),!n.length&&p("span",{class:"quiet",children:"The kinds are being listed \u2026"}),n.map(g=>p("label",{children:[p("input",{type:"checkbox",checked:s.includes(g.name),onChange:v=>r(Td(s,g.name,v.currentTarget.checked))})," ",p("span",{children:[p("b",{children:g.name.replaceAll("-"," ")}),", for ",g.reader,p("small",{children:g.holds})]})]},g.name))]}),p(v_,{legend:"For (nobody: for all)",chosen:o,choose:a,crew:!0})]}),p("p",{class:"row",children:[p("label",{children:["Paper ",p("select",{value:l,onChange:g=>c(g.currentTarget.value),children:[p("option",{value:"a4",children:"A4"}),p("option",{value:"letter",children:"Letter"})]})]}),p("label",{children:["Mark what has changed since ",p("input",{type:"text",value:u,placeholder:"an earlier show file, beside this one",onInput:g=>h(g.currentTarget.value)})]})]}),p("p",{class:"row",children:p("button",{type:"submit",class:"main",disabled:d,children:"Make the sheets"})})]})}function BT(){let[n,t]=At(["page","counts"]),[e,i]=At([100]),[s,r]=At("pitched"),[o,a]=At([]),[l,c]=At(!1),[u,h]=At(!0),[d,f]=At(!1),g=n.includes("counts"),v=n.length>0&&(!g||e.length>0),_=()=>{mn("rehearsal",{parts:n,speeds:(g?e:[100]).map(m=>m/100),counts:s,people:o,clicks_only:l,no_calls:!u,split:d})};return p("form",{class:"printed",onSubmit:m=>{m.preventDefault(),v&&_()},children:[p("h3",{children:"To rehearse with, and for other programs"}),p("fieldset",{class:"kinds",children:[p("legend",{children:"What"}),LT.map(([m,y,M])=>p("label",{children:[p("input",{type:"checkbox",checked:n.includes(m),onChange:b=>t(Td(n,m,b.currentTarget.checked))})," ",p("span",{children:[p("b",{children:y}),p("small",{children:M})]})]},m))]}),g&&p("details",{children:[p("summary",{children:"How the count track sounds"}),p("fieldset",{children:[p("legend",{children:"Speeds, at the same pitch"}),g_.map(m=>p("label",{children:[p("input",{type:"checkbox",checked:e.includes(m),onChange:y=>i(g_.filter(M=>M===m?y.currentTarget.checked:e.includes(M)))})," ",m," %"]},m))]}),p("p",{class:"row",children:p("label",{children:["The last four beats before a change are ",p("select",{value:s,onChange:m=>r(m.currentTarget.value),children:[p("option",{value:"pitched",children:"pitched clicks"}),p("option",{value:"spoken",children:"spoken"}),p("option",{value:"none",children:"not counted"})]})]})}),p("fieldset",{children:[p("legend",{children:"In it"}),p("label",{children:[p("input",{type:"checkbox",checked:!l,onChange:m=>c(!m.currentTarget.checked)})," the song"]}),p("label",{children:[p("input",{type:"checkbox",checked:u,onChange:m=>h(m.currentTarget.checked)})," three notes before each section"]}),p("label",{children:[p("input",{type:"checkbox",checked:d,onChange:m=>f(m.currentTarget.checked)})," song left, counts right"]})]}),p(v_,{legend:"Changes of (nobody: of all)",chosen:o,choose:a})]}),p("p",{class:"row",children:p("button",{type:"submit",class:"main",disabled:!v,children:"Make these"})})]})}function v_({legend:n,chosen:t,choose:e,crew:i=!1}){let s=yt.value?.values,r=[...s?.cast??[],...i?s?.crew??[]:[]].map(o=>o.name).filter(Boolean);return p("fieldset",{children:[p("legend",{children:n}),r.map(o=>p("label",{children:[p("input",{type:"checkbox",checked:t.includes(o),onChange:a=>e(Td(t,o,a.currentTarget.checked))})," ",o]},o))]})}var Td=(n,t,e)=>e?[...n.filter(i=>i!==t),t]:n.filter(i=>i!==t);function y_(){ae(()=>{me("share").then(t=>uo.value=t,()=>{})},[]);let n=uo.value;return!n||n.over?null:p("aside",{class:"shared","aria-label":"The show is shared",children:[p("p",{children:[p("b",{children:"Shared with the network"})," at ",p("span",{class:"copy",children:n.address}),", code ",p("span",{class:"copy",children:n.code})]}),p("p",{role:"status",children:n.watching===0?"no page watches":n.watching===1?"1 page watches":`${n.watching} pages watch`}),n.shut&&p("p",{class:"fault",children:"Wrong codes came too often: nobody can join any more until it is shared anew."}),p("details",{children:[p("summary",{children:"What that exposes"}),p("p",{children:["Whoever has the code sees ",n.exposed,"; nobody can change anything. Nothing is encrypted: others on this network may read along. It ends with this program."]})]}),p("button",{type:"button",class:"small",onClick:()=>{zn(()=>Ce("unshare",{}),"It is shared no longer.")},children:"Stop sharing"})]})}var zT=.05,VT=.5,x_=.05;function GT(n){let t=[],e=[],i=([d,f])=>{t.push(d),e.push(f)};n.place.outline.forEach(i),n.place.audience.forEach(d=>d.line.forEach(i)),n.crew.forEach(d=>i(d.at)),n.place.extinguishers.forEach(i),n.place.fuel&&i(n.place.fuel);for(let d of Object.values(n.formations))Object.values(d.spots).forEach(i);if(!t.length)return{x0:-5,x1:5,y0:-5,y1:8};let s=(d,f,g)=>d.filter(v=>v>f&&v<g),r=n.place.outline.length?n.place.outline:Object.values(n.formations).flatMap(d=>Object.values(d.spots).map(f=>[f[0],f[1]])),o=r.map(d=>d[0]),a=r.map(d=>d[1]),[l,c,u,h]=[Math.min(...o)-5,Math.max(...o)+5,Math.min(...a)-7,Math.max(...a)+6];return{x0:Math.min(...o,...s(t,l,c))-.8,x1:Math.max(...o,...s(t,l,c))+.8,y0:Math.min(...a,...s(e,u,h))-.8,y1:Math.max(...a,...s(e,u,h))+.8}}function HT(n,t){return[...n.standings].reverse().find(e=>e.walk<=t+1e-6)??n.standings[0]??null}function b_(){let n=Pt.value,t=fe.value,e=be(null),[,i]=At(0),[s,r]=At(null),o=be(new Map),a=be(Promise.resolve()),l=be(0);if(Ka.value&&!l.current&&o.current.clear(),!n||!t)return p("p",{class:"quiet",children:"There is no stage to show yet."});let c=t.beatAt(pn.value),u=HT(n,c);if(!u)return p("p",{class:"quiet",children:"The file says nothing about where anybody stands."});let h=GT(n),d=(y,M)=>[y-h.x0,h.y1-M],f=y=>y.map(([M,b])=>d(M,b).map(E=>E.toFixed(2)).join(",")).join(" "),g=Se.value.flatMap(y=>{let M=u.spots[y];if(!M)return[];let b=s?.who===y?s.at:o.current.get(`${u.formation} ${y}`)??[M[0],M[1]];return[[y,[b[0],b[1],M[2]]]]}),v=WT(g,n),_=y=>{let M=e.current.getScreenCTM().inverse(),b=new DOMPoint(y.clientX,y.clientY).matrixTransform(M);return[Bu(b.x+h.x0),Bu(h.y1-b.y)]},m=(y,M)=>{let b=`${u.formation} ${y}`;o.current.set(b,M),l.current+=1,i(E=>E+1),a.current=a.current.then(async()=>{o.current.get(b)===M&&!await qt({do:"move-spot",formation:u.formation,who:y,at:M},`${y} stands at ${M[0]}, ${M[1]} in ${u.formation}.`)&&o.current.delete(b),l.current-=1,i(A=>A+1)})};return p("figure",{class:"plan",children:[p("figcaption",{children:[p("b",{children:u.formation}),", from ",u.position,n.formations[u.formation]?.used.length>1&&` (danced in ${n.formations[u.formation].used.length} times: all move with it)`]}),p("svg",{ref:e,viewBox:`0 0 ${(h.x1-h.x0).toFixed(2)} ${(h.y1-h.y0).toFixed(2)}`,role:"group","aria-label":`The stage from above, ${u.formation}; the audience is below`,onPointerMove:y=>s&&r({...s,at:_(y)}),onPointerUp:()=>{if(!s)return;let y=u.spots[s.who];y&&Math.hypot(y[0]-s.at[0],y[1]-s.at[1])>.02&&m(s.who,s.at),r(null)},onPointerCancel:()=>r(null),children:[p("polygon",{class:"floor",points:f(n.place.outline)}),n.place.holes.map((y,M)=>p("polygon",{class:"hole",points:f(y)},M)),n.place.audience.map(y=>p("polyline",{class:"audience",points:f(y.line)},y.name)),n.place.scenery.map(y=>p("polygon",{class:"thing",points:f(y.outline),children:p("title",{children:y.name})},y.name)),n.place.extinguishers.map((y,M)=>p(Ad,{at:d(...y),sign:"E",words:"extinguisher"},M)),n.place.fuel&&p(Ad,{at:d(...n.place.fuel),sign:"F",words:"fuel point"}),n.crew.map(y=>p(Ad,{at:d(...y.at),sign:y.name[0],words:`${y.name}, ${y.duty}`},y.name)),v.map(([y,M,b])=>{let[E,A]=d(y[0],y[1]),[x,T]=d(M[0],M[1]);return p("g",{class:"close",children:[p("line",{x1:E,y1:A,x2:x,y2:T}),p("text",{x:(E+x)/2,y:(A+T)/2-.15,children:[b.toFixed(2)," m"]})]},`${E} ${A} ${x} ${T}`)}),g.map(([y,[M,b,E]])=>{let[A,x]=d(M,b),T=n.reach[y]??1,D=E*Math.PI/180;return p("g",{class:s?.who===y?"spot dragged":"spot",children:[p("circle",{class:"reach",cx:A,cy:x,r:T}),p("line",{class:"facing",x1:A,y1:x,x2:A+.55*Math.sin(D),y2:x+.55*Math.cos(D)}),p("circle",{class:"body",cx:A,cy:x,r:.34,tabindex:Jn.value?void 0:0,role:Jn.value?"img":"button","aria-label":Jn.value?`${y}, ${M.toFixed(2)} across, ${b.toFixed(2)} upstage`:`${y}, ${M.toFixed(2)} across, ${b.toFixed(2)} upstage; arrow keys move by 5 cm, with Shift by 50 cm`,onPointerDown:R=>{Jn.value||(R.preventDefault(),e.current.setPointerCapture(R.pointerId),r({who:y,at:[M,b]}))},onKeyDown:R=>{if(Jn.value)return;let P=R.shiftKey?VT:zT,F={ArrowLeft:[-P,0],ArrowRight:[P,0],ArrowUp:[0,P],ArrowDown:[0,-P]};F[R.key]&&(R.preventDefault(),m(y,[Bu(M+F[R.key][0]),Bu(b+F[R.key][1])]))}}),p("text",{x:A,y:x+.95,children:y})]},y)})]}),p("p",{class:"quiet",children:s?`${s.who}: ${s.at[0].toFixed(2)} m across, ${s.at[1].toFixed(2)} m upstage. Distances are between spots, as drawn; the checks look at every moment when you let go.`:"Thin circles: how far body, prop and flame reach. The audience is below."})]})}var Bu=n=>Math.round(Math.round(n/x_)*x_*100)/100;function WT(n,t){return n.flatMap(([e,i],s)=>n.slice(s+1).flatMap(([r,o])=>{let a=Math.hypot(i[0]-o[0],i[1]-o[1]);return a<(t.reach[e]??1)+(t.reach[r]??1)?[[i,o,a]]:[]}))}function Ad({at:[n,t],sign:e,words:i}){return p("g",{class:"mark",children:[p("title",{children:i}),p("rect",{x:n-.28,y:t-.28,width:.56,height:.56}),p("text",{x:n,y:t+.16,children:e})]})}function M_(){let n=yt.value,t=n.text.includes(`\r
`),e=n.text.replaceAll(`\r
`,`
`),{text:i,based:s,revision:r}=xs.value??{text:e,based:e,revision:n.revision},o=h=>xs.value=h===s?null:{text:h,based:s,revision:r},a=be(null),l=i!==s,c=s!==e,u=(h,d)=>{let g=i.split(`
`).slice(0,h-1).reduce((v,_)=>v+_.length+1,0)+d-1;a.current?.focus(),a.current?.setSelectionRange(g,g+1)};return p("div",{class:"text",children:[n.faults.map(h=>p("p",{class:"fault",children:[h.message," ",h.line!==null&&p("button",{type:"button",class:"small",onClick:()=>u(h.line,h.column??1),children:["Go to line ",h.line]})]},h.message)),p("textarea",{ref:a,spellcheck:!1,"aria-label":`The text of ${n.file}`,value:i,onInput:h=>o(h.currentTarget.value)}),c&&l&&p("p",{class:"fault",children:"The show was changed since you began to type: both changes are put together if they touch different places."}),p("p",{class:"row",children:[p("button",{type:"button",class:"main",disabled:!l,onClick:()=>{qt({do:"replace-text",text:t?i.replaceAll(`
`,`\r
`):i},"The text is taken.",r).then(h=>h&&(xs.value=null))},children:"Take this text"}),p("button",{type:"button",disabled:!l,onClick:()=>xs.value=null,children:"Back to the show's"})]})]})}function S_(){let n=yt.value,t=be(null);if(ae(()=>t.current?.showModal(),[n?.outside!==null]),!n?.outside)return null;let e=i=>{zn(()=>Ce("outside",{take:i}),i==="mine"?"Yours is kept.":"The other one is taken.")};return p("dialog",{ref:t,class:"outside","aria-label":"The file was changed elsewhere",onCancel:i=>i.preventDefault(),children:[p("h2",{children:"The file was changed elsewhere"}),p("p",{children:n.outside.message}),p("div",{class:"both",children:[p("div",{children:[p("h3",{children:"Here"}),p("pre",{tabIndex:0,children:n.text}),p("button",{type:"button",class:"main",onClick:()=>e("mine"),children:"Keep this one"})]}),p("div",{children:[p("h3",{children:"In the file"}),p("pre",{tabIndex:0,children:n.outside.text}),p("button",{type:"button",onClick:()=>e("theirs"),children:"Take this one"})]})]}),p("p",{class:"quiet",children:"Neither is lost: what is not kept can be had back with Undo."})]})}var Kr=n=>n==null?[]:[n].flat().map(String);function w_(){let n=yt.value?.values,t=Pt.value;if(!n||!t)return p("p",{class:"quiet",children:n===null?"The file cannot be read: mend it under Text.":"The show is being staged \u2026"});let e=Kr(n.tonight?.away),i=n.tonight?.stand_ins??[],s=n.cast??[],r=n.crew??[],o=l=>e.includes(l)?"away":i.some(c=>c.for===l)?"other":"here",a=(l,c)=>p(XT,{name:l.name,group:c,where:o(l.name),standIn:i.find(u=>u.for===l.name),stature:l.stature,children:c==="cast"?p($T,{name:l.name,timeline:n.timeline??[],everybody:s.map(u=>u.name)}):p("li",{children:[l.duty??"spotter",Kr(l.watches).length?`, watches ${Kr(l.watches).join(", ")}`:""]})},l.name);return p("div",{class:"who",children:[p("p",{class:"quiet",children:"For tonight only: the show stays as it is written, and everybody who is there keeps their counts and spots. Everything is looked at again without those who are away, and with the bodies of those who stand in."}),(e.length>0||i.length>0)&&p("p",{class:"row",children:p("button",{type:"button",onClick:()=>{qt({do:"set-there"},"Everybody is there.")},children:"Everybody is there"})}),p("h3",{children:"Cast"}),s.map(l=>a(l,"cast")),r.length>0&&p("h3",{children:"Crew"}),r.map(l=>a(l,"crew"))]})}function XT({name:n,group:t,where:e,standIn:i,stature:s,children:r}){let[o,a]=At(e);ae(()=>a(e),[e]);let l=async u=>{if(a(u),u==="other"||u===e)return;await qt(u==="away"?{do:"set-away",name:n}:{do:"set-there",name:n},u==="away"?`${n} is away tonight.`:`${n} is there.`)||a(e)},c=[["here","is here"],["away","is away"],["other","is replaced"]];return p("section",{class:`person ${e}`,"aria-label":n,children:[p("h4",{children:[n,e==="other"&&i?p("small",{children:[" tonight ",i.name]}):""]}),p("div",{class:"choice",role:"radiogroup","aria-label":`${n} tonight`,children:c.map(([u,h])=>p("label",{children:[p("input",{type:"radio",name:`tonight ${t} ${n}`,checked:o===u,onChange:()=>{l(u)}})," ",h]},u))}),o==="other"&&p(qT,{part:n,group:t,known:i,stature:s}),p("ul",{class:"words",children:r})]})}function qT({part:n,group:t,known:e,stature:i}){let[s,r]=At(String(e?.name??"")),[o,a]=At(String(e?.stature??"")),[l,c]=At(String(e?.birth_year??"")),u=()=>{let{for:h,...d}=e&&e.name===s.trim()?e:{},f={...d,name:s.trim()};t==="cast"&&Object.assign(f,{stature:o.trim()},l.trim()?{birth_year:Number(l)}:{}),qt({do:"set-stand-in",part:n,person:f},`${s} takes the part of ${n} tonight.`)};return p("form",{class:"row",onSubmit:h=>{h.preventDefault(),u()},children:[p("label",{children:["Who takes the ",t==="cast"?"part":"post"," ",p("input",{type:"text",required:!0,value:s,onInput:h=>r(h.currentTarget.value)})]}),t==="cast"&&p("label",{children:["Height ",p("input",{type:"text",required:!0,value:o,placeholder:String(i??"1.70 m"),onInput:h=>a(h.currentTarget.value)})]}),t==="cast"&&p("label",{children:["Born in ",p("input",{type:"text",inputMode:"numeric",pattern:"[0-9]{4}",title:"a year, such as 1994: rules set a minimum age",value:l,onInput:h=>c(h.currentTarget.value)})]}),p("button",{type:"submit",disabled:!s.trim()||t==="cast"&&!o.trim(),children:e?"Change":"Takes it tonight"})]})}function $T({name:n,timeline:t,everybody:e}){let i=(Qs.value.get(n)??[]).filter(a=>a.path!==null&&a.kind!=="link"),s=Pt.value.missing.filter(a=>a.who===n),r=Pt.value.cast.find(a=>a.name===n)?.lit??[],o=t.filter(a=>a.canon&&(Kr(a.who).length===0||Kr(a.who).includes("all")?e:Kr(a.who))[0]===n);return s.length?p("li",{children:["falls out: ",s.length," blocks, from ",s[0].position," to ",s[s.length-1].end_position]}):i.length?p(jt,{children:[p("li",{children:["comes in at ",i[0].position," (",i[0].title,"), ends at ",i[i.length-1].end_position]}),o.length>0&&p("li",{children:["begins ",o.length===1?"a canon":`${o.length} canons`,": ",o.map(a=>a.phrase??a.pattern??(a.link?"a link":"a rest")).join(", ")]}),r.length>0&&p("li",{children:["lit ",r.length===1?"once":`${r.length} times`]})]}):p("li",{children:"dances nothing yet"})}var La=Ut(null),zu=Ut(!1),jr=[["The sheet","Your song stands here in eights, as on a count sheet. A bar across the counts is a move, a hatched one the link to the next. Click a count, or walk there with the arrow keys and press Enter, to put a move or to change the one that is there.",".left"],["A routine to begin with","Under Draft you get a proposal: moves that everybody can dance at this tempo, checked as a whole. You see it before it goes into the show, and one Undo takes it out again.","#tab-draft"],["Hear it, see it","The space bar plays the song. Under Dance the show is danced; under Stage you drag everybody to where they stand.",".transport"],["What stands against it","After every change the show is looked at anew: reach, distances, walks, fire. The answer stands up here, each finding beside its row and under Findings, often with a mend to try.",".verdict"],["Save and print","Nothing that you do is lost, and Undo goes back to the beginning. Save writes the file. Under Print are the sheets for the night and the page to rehearse with.",".tools"]];async function E_(){let{seen:n}=await me("tour");n||(La.value=0)}function C_(){zu.value=!0,La.value=0}function T_(){La.value=null,Ce("tour",{}).catch(()=>{}),zu.value&&document.getElementById("call-tour")?.focus()}function A_(n){zu.value=!0,La.value=n}function R_(){let n=La.value,t=be(null);if(ae(()=>{if(n===null)return;let s=document.querySelector(jr[n][2]);return s?.classList.add("toured"),zu.value&&t.current?.focus(),()=>s?.classList.remove("toured")},[n]),n===null)return null;let[e,i]=jr[n];return p("section",{class:"tour","aria-labelledby":"tour-title",onKeyDown:s=>{s.key==="Escape"&&T_()},children:[p("div",{children:[p("h2",{id:"tour-title",ref:t,tabIndex:-1,"aria-describedby":"tour-words",children:[e," ",p("small",{children:[n+1," of ",jr.length]})]}),p("p",{id:"tour-words",children:i})]}),p("p",{class:"row",children:[n>0&&p("button",{type:"button",onClick:()=>A_(n-1),children:"Back"}),n<jr.length-1&&p("button",{type:"button",class:"main",onClick:()=>A_(n+1),children:"Next"}),p("button",{type:"button",class:n===jr.length-1?"main":"",onClick:T_,children:n===jr.length-1?"Done":n?"End the tour":"No tour"})]})]})}function P_(){let n=yt.value;return p("header",{class:"top",children:[p("h1",{children:Pt.value?.title??n?.file??"\u2026"}),p("p",{class:"file",children:n?`${n.file} \xB7 ${n.saved?"saved":"not saved yet"}${YT(n.values)}`:""}),p(ZT,{}),p("div",{class:"tools",children:[p("button",{type:"button",disabled:!n?.undo,onClick:()=>{Qa()},title:n?.undo?`Take back: ${n.undo} (Ctrl + Z)`:"Nothing to take back",children:"Undo"}),p("button",{type:"button",disabled:!n?.redo,onClick:()=>{po()},title:n?.redo?`Do again: ${n.redo} (Ctrl + Y)`:"Nothing to do again",children:"Redo"}),p("button",{type:"button",class:n&&!n.saved?"main":"",disabled:!n||n.saved,onClick:()=>{tl()},title:"Write the file (Ctrl + S)",children:"Save"}),p("button",{type:"button",id:"call-tour",onClick:C_,children:"Tour"})]}),p("p",{class:"unseen",role:"status","aria-live":"polite",children:De.value})]})}function YT(n){let t=[n?.tonight?.away??[]].flat(),i=[...(n?.tonight?.stand_ins??[]).map(s=>`${s.name} for ${s.for}`),...t.length?[`without ${t.join(", ")}`]:[]];return i.length?` \xB7 tonight ${i.join(", ")}`:""}function ZT(){let n=yt.value,t=Zs.value,e=Yn.value;if(!n)return p("p",{class:"verdict",children:"opening \u2026"});if(!n.readable)return p("p",{class:"verdict stop",children:"The file cannot be read: see Text"});if(Zn.value)return p("p",{class:"verdict stop",title:Zn.value,children:"Cannot be danced as it is written"});let i=t!==null&&t.revision===n.revision&&!co.value;if(i&&t.error)return p("p",{class:"verdict stop",title:t.error.message,children:["A check broke off: ",t.error.message]});let s=t?.counts??{stop:0,warn:0,note:0},r=i?t.open?.length??null:null,o=[s.stop?`${s.stop} stop`:"",s.warn?`${s.warn} warn`:""].filter(Boolean).join(", "),a=i&&r===1&&t.open?.[0]==="mends";if(!a&&(!i||r!==0||!t.complete||e?.revision!==n.revision))return p("p",{class:"verdict looking",children:[i&&t.hearing?"hearing the song":r===null?"looking again":`looking: ${r} ${r===1?"check":"checks"} left`,o&&i?`, so far ${o}`:"",i&&t.share!==null&&p("progress",{max:1,value:t.share,"aria-label":t.words??"looking"})]});let l=a?"; mends are being sought":"";return s.stop?p("p",{class:"verdict stop",children:["Do not dance yet: ",o,l]}):s.warn?p("p",{class:"verdict warn",children:["Dance with care: ",o,l]}):p("p",{class:"verdict good",children:"Clear, of what is looked at"})}function Ed(){return p("div",{class:"notices",role:"status",children:[Ge.value&&p("p",{class:"refused",role:"alert",children:[Ge.value.words," ",Ge.value.anyway&&p("button",{type:"button",class:"small",onClick:Ge.value.anyway,children:"Do it all the same"})," ",p("button",{type:"button",class:"small",onClick:()=>Ge.value=null,children:"Close"})]}),oi.value&&p("p",{class:"warn",children:oi.value}),yt.value?.kept.message&&p("p",{class:"warn",children:yt.value.kept.message}),Ys.value.map(n=>p("p",{class:n.warn?"warn":"",children:n.words},n.id))]})}var Cd={findings:"Findings",stage:"Stage",dance:"Dance",count:"Count",who:"Who",draft:"Draft",forms:"Show",print:"Print",text:"Text"};function JT(){let n=yt.value;return n?n.text.trim()?p(jt,{children:[p("a",{class:"skip",href:"#side",children:"Skip the sheet"}),p(P_,{}),p(R_,{}),p(y_,{}),p("main",{children:[p("section",{class:"left","aria-label":"The sheet",children:[Zn.value&&n.readable&&p("p",{class:"fault",children:Zn.value}),p(Vp,{}),p(Up,{}),Pt.value?p(r_,{}):p("p",{class:"quiet",children:n.readable?Zn.value?"":"The show is being staged \u2026":"The file cannot be read as a show: mend it under Text."})]}),p("aside",{id:"side",class:"side",children:[p(f_,{}),p("div",{class:"tabs",role:"tablist","aria-label":"Beside the sheet",onKeyDown:jT,children:Object.keys(Cd).map(t=>p("button",{id:`tab-${t}`,type:"button",role:"tab","aria-selected":le.value===t,"aria-controls":"panel",tabIndex:le.value===t?0:-1,onClick:()=>le.value=t,children:[Cd[t],t==="findings"&&p(KT,{})]},t))}),p("div",{id:"panel",class:"panel",role:"tabpanel",tabIndex:0,"aria-labelledby":`tab-${le.value}`,children:[le.value==="findings"&&p(X0,{}),le.value==="stage"&&p(b_,{}),le.value==="dance"&&p(W0,{}),le.value==="count"&&p(Qp,{}),le.value==="who"&&p(w_,{}),le.value==="draft"&&p(Dp,{}),le.value==="forms"&&p(Z0,{}),le.value==="print"&&p(__,{}),le.value==="text"&&p(M_,{})]})]})]}),p(qp,{}),p(Ed,{}),p(S_,{}),p(J0,{})]}):p(jt,{children:[p(Bp,{}),p(Ed,{})]}):p("main",{class:"opening",children:p("p",{children:oi.value??"Opening the show \u2026"})})}function KT(){let n=(Yn.value?.entries??[]).filter(t=>t.severity!=="note").length;return n?p("b",{class:"number",children:n}):null}function jT(n){let t=Object.keys(Cd),e={ArrowLeft:-1,ArrowRight:1}[n.key];e&&(n.preventDefault(),le.value=t[(t.indexOf(le.value)+e+t.length)%t.length],setTimeout(()=>document.getElementById(`tab-${le.value}`)?.focus()))}addEventListener("keydown",n=>{let t=n.target,e=t.matches("textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])"),i=n.ctrlKey||n.metaKey,s=n.key.toLowerCase();i&&s==="s"?(n.preventDefault(),tl()):i&&!e&&s==="z"?(n.preventDefault(),n.shiftKey?po():Qa()):i&&!e&&s==="y"?(n.preventDefault(),po()):!i&&!e&&n.key===" "&&!t.matches("button, input, summary")&&(n.preventDefault(),we.toggle())});addEventListener("beforeunload",n=>{(yt.value&&!yt.value.saved&&yt.value.autosave==="journal"||xs.value)&&!oi.value&&n.preventDefault()});async function QT(){try{await Qd(),await ja()}catch(n){oi.value=n instanceof Ie&&n.status===403?"This address has lost its key: open the page again from the terminal, where sequencer open printed it.":String(n instanceof Error?n.message:n);return}yt.value.readable||(le.value="text"),el(),hh(),fh().catch(()=>{}),rl().catch(()=>{}),E_().catch(()=>{}),me("patterns").then(n=>Js.value=n.patterns,()=>{});for(let n=0;n<5;){try{await np((t,e)=>{n=0,t==="end"&&(oi.value=e.message),t==="errand"&&(e.kind==="begin"?kp(e):Pp(e)),Rp(t,e)})}catch{n+=1}if(oi.value)return;n+=1,await new Promise(t=>setTimeout(t,500*n))}oi.value="The program behind this page has ended. Run sequencer open again: nothing is lost."}jd(p(JT,{}),document.getElementById("page"));QT();})();
